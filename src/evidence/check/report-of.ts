import type { Issue } from "#core";
import type { WhatEntriesDo } from "../bag/what-entries-do.ts";
import { error, note } from "../issue.ts";
import type { HeadsOutcome } from "./check-heads.ts";
import type { DeviceInEvidence, EvidenceReport, EvidenceVerdict, FirstBadEntry } from "./evidence-report.ts";
import type { BagLog } from "./read-log.ts";

/** Findings kept in a report; nobody reads more, and a hostile file must not fill the memory twice. */
const MAX_FINDINGS = 1_000;

interface Parts extends Pick<EvidenceReport, "seals" | "blobs" | "devices" | "firstBad" | "notChecked"> {
  readonly log: BagLog;
  readonly outcome: HeadsOutcome;
  /** what shows that this is not what was signed; warnings among it do not */
  readonly changed: readonly Issue[];
  /** what is open in a log that may well be what was signed */
  readonly unsettled: readonly Issue[];
  readonly clocks: readonly Issue[];
}

/**
 * Puts the parts of a check together and gives the answer.
 *
 * Answers: evidence.answer-sound, evidence.answer-unsettled, evidence.answer-changed-at, evidence.answer-changed-between,
 *   evidence.answer-changed.
 */
export function reportOf(parts: Parts): EvidenceReport {
  const { log, outcome, changed, unsettled, clocks, seals, blobs, devices, firstBad, notChecked } = parts;
  const verdict = changed.some(({ severity }) => severity === "error")
    ? "changed"
    : unsettled.length > 0
      ? "unsettled"
      : "sound";
  return {
    verdict,
    isSound: verdict === "sound",
    answer: answerOf(verdict, log.ids.length, devices.length, seals.length, firstBad),
    job: log.job,
    entries: log.ids.length,
    firstBad,
    devices,
    heads: outcome.heads,
    knownHeads: outcome.knownHeads,
    seals,
    blobs,
    findings: [...new Set([...changed, ...unsettled, ...clocks])].slice(0, MAX_FINDINGS),
    notChecked,
  };
}

function answerOf(
  verdict: EvidenceVerdict,
  entries: number,
  devices: number,
  seals: number,
  firstBad: FirstBadEntry | undefined,
): Issue {
  if (verdict === "sound") return note("evidence.answer-sound", {}, { entries, devices, seals });
  if (verdict === "unsettled") return error("evidence.answer-unsettled", {}, { entries });
  if (firstBad === undefined) return error("evidence.answer-changed");
  const { place, upTo } = firstBad;
  if (place === upTo) return error("evidence.answer-changed-at", {}, { place });
  return error("evidence.answer-changed-between", {}, { from: place, to: upTo });
}

/** The report of something that is no bag. Answers: evidence.answer-no-bag. */
export const noBag = (findings: readonly Issue[]): EvidenceReport => ({
  verdict: "no-bag",
  isSound: false,
  answer: error("evidence.answer-no-bag"),
  job: "",
  entries: 0,
  firstBad: undefined,
  devices: [],
  heads: [],
  knownHeads: [],
  seals: [],
  blobs: { named: 0, missing: [], changed: [] },
  findings,
  notChecked: [],
});

/** Every device with its chain, in the order of the devices' names. */
export function devicesOf(
  log: BagLog,
  does: WhatEntriesDo,
  breaks: readonly FirstBadEntry[],
): readonly DeviceInEvidence[] {
  const names = new Map(does.devices.map(({ public_key, name }) => [public_key, name]));
  const broken = new Set(breaks.map(({ issue }) => issue.values["device"]));
  for (const place of log.lineIssues.keys()) {
    const { device } = (log.claims[place - 1] ?? {}) as { readonly device?: unknown };
    if (typeof device === "string") broken.add(device);
  }
  return [...log.report.chains.values()].map(
    ({ device, followed, waiting, abandoned, missing, passedOver, forks }) => ({
      device,
      name: names.get(device) ?? "",
      entries: followed.length + waiting.length + abandoned.length,
      followed: followed.length,
      missing,
      passedOver,
      forks,
      isSound: !broken.has(device),
    }),
  );
}
