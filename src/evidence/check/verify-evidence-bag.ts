import type { Issue, Result } from "#core";
import { createVerifier, foldChains } from "#records";
import { checkBagIt } from "../bag/bag-it.ts";
import { derivedFiles } from "../bag/derived-files.ts";
import { areSame } from "../bag/lines.ts";
import type { BagFiles } from "../bag/names.ts";
import { type WhatEntriesDo, whatEntriesDo } from "../bag/what-entries-do.ts";
import { error } from "../issue.ts";
import { chainBreaks } from "./chain-breaks.ts";
import { checkBlobs } from "./check-blobs.ts";
import { checkHeads, type HeadsOutcome, type ReadHeads, readHeads } from "./check-heads.ts";
import { checkSeals } from "./check-seals.ts";
import { claimOf } from "./claim-of.ts";
import type { EvidenceOptions } from "./evidence-options.ts";
import type { EvidenceReport, FirstBadEntry } from "./evidence-report.ts";
import { firstAgainstList, firstWithoutList } from "./locate.ts";
import { notChecked } from "./not-checked.ts";
import { bagIn, openBag } from "./open-bag.ts";
import { type BagLog, readLog } from "./read-log.ts";
import { devicesOf, noBag, reportOf } from "./report-of.ts";

/**
 * Checks an evidence bag: whether it is, to the last byte that counts, what was signed; and if not, from which entry on.
 *
 * Nothing from outside is needed. What is known from outside makes the answer stronger: without it, whoever makes all
 * signatures anew with keys of their own can write another story that fits itself (docs/formats/evidence-bag.md).
 *
 * @param bytes of a ZIP archive from anywhere. Nothing in it makes this throw.
 */
export async function verifyEvidenceBag(
  bytes: Uint8Array,
  options: EvidenceOptions = {},
): Promise<EvidenceReport> {
  return verifyOpened(openBag(bytes), options);
}

/** The same for a bag that was unpacked into a folder. @param files by name, as they stand in it or around it. */
export async function verifyEvidenceFiles(
  files: BagFiles,
  options: EvidenceOptions = {},
): Promise<EvidenceReport> {
  return verifyOpened(bagIn(files), options);
}

async function verifyOpened(
  opened: Result<BagFiles, readonly Issue[]>,
  options: EvidenceOptions,
): Promise<EvidenceReport> {
  if (!opened.ok) return noBag(opened.error);
  const files = opened.value;
  const verifier = createVerifier();
  const log = await readLog(files, verifier);
  const heads = await readHeads(files, verifier);
  const outcome = await checkHeads({
    job: log.job,
    valid: heads.valid,
    ids: log.ids,
    listed: log.listed,
    knownHeads: options.knownHeads ?? [],
    officeKey: options.knownOfficeKey,
  });
  const does = whatEntriesDo(log.sound);
  const state = foldChains(log.report.chains);
  const seals = await checkSeals(does, log.report.chains, verifier, state);
  const { blobs, missing, changed } = await checkBlobs(files, does.blobs);
  const breaks = chainBreaks(log);
  const notFitting = seals.flatMap(({ issue }) => (issue === undefined ? [] : [issue]));
  const located = locate(log, outcome);
  return reportOf({
    log,
    outcome,
    seals,
    blobs,
    devices: devicesOf(log, does, breaks),
    firstBad: located ?? firstOf(breaks, [...notFitting, ...missing], log),
    changed: [
      ...(located === undefined ? [] : [located.issue]),
      ...log.lineIssues.values(),
      ...outcome.issues,
      ...changed,
      ...log.issues,
      ...heads.issues,
      ...(await checkBagIt(files)),
      ...derivedIssues(files, log, heads, does),
    ],
    unsettled: [...breaks.map(({ issue }) => issue), ...notFitting, ...missing],
    clocks: log.report.findings.filter(({ severity }) => severity !== "error"),
    notChecked: notChecked(options, state, log.ids.length),
  });
}

/** The first entry that is not as signed. */
function locate(log: BagLog, outcome: HeadsOutcome): FirstBadEntry | undefined {
  if (!outcome.isListSigned) return firstWithoutList(log, outcome);
  const against = firstAgainstList(log, log.listed ?? []);
  if (against !== undefined || outcome.failsAt === Infinity) return against;
  return firstWithoutList(log, outcome);
}

/** The first of what is open in a log that is as it was signed. */
function firstOf(
  breaks: readonly FirstBadEntry[],
  others: readonly Issue[],
  log: BagLog,
): FirstBadEntry | undefined {
  const ofOthers = others.map((issue): FirstBadEntry => {
    const place = issue.place.line ?? 1;
    const entry = log.sound.find((one) => one.place === place)?.entry;
    return { place, upTo: place, ...claimOf(entry), issue };
  });
  return [...breaks, ...ofOthers].reduce<FirstBadEntry | undefined>(
    (first, one) => (first === undefined || one.place < first.place ? one : first),
    undefined,
  );
}

/** Errors: evidence.derived-differs. */
function derivedIssues(
  files: BagFiles,
  log: BagLog,
  { valid }: ReadHeads,
  does: WhatEntriesDo,
): readonly Issue[] {
  const made = derivedFiles(
    log.job,
    valid.map(([, head]) => head),
    does,
  );
  if (!made.ok) return [made.error];
  return [...made.value]
    .filter(([name, text]) => !areSame(new TextEncoder().encode(text), files.get(name)!))
    .map(([file]) => error("evidence.derived-differs", { file }));
}
