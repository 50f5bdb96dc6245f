import type { Issue } from "#core";
import type { Verifier } from "../crypto/keys.ts";
import { checkEntry } from "../entry/check-entry.ts";
import type { Entry } from "../entry/entry.ts";
import { error } from "../issue.ts";
import { clockFindings } from "./clock-findings.ts";
import { type Chains, type DeviceChain, walkChains } from "./walk-chains.ts";

/** The first thing wrong in one device's chain. */
export interface FirstBad {
  readonly device: string;
  /** place in the chain, as far as the entry says one; 0 if it does not */
  readonly sequence: number;
  readonly issue: Issue;
}

export interface LogReport {
  /** entries that are sound by themselves */
  readonly sound: readonly Entry[];
  readonly chains: Chains;
  /** the first bad entry of every device that has one, in the order of the devices' names */
  readonly firstBad: readonly FirstBad[];
  /** everything found, in the order of the log, then by device; clocks last */
  readonly findings: readonly Issue[];
}

/**
 * Checks a whole log: every entry by itself, then the chain of every device, then the clocks.
 *
 * A tail that was cut off leaves no mark in the chain itself. It shows where another device has seen the entries, or against a
 * head that somebody kept (`checkAgainstHead`).
 *
 * @param raw what was read, in the order of the log.
 * @param job the log's job; entries of another one do not belong here.
 *
 * Errors: those of checkEntry, records.other-job, records.entry-twice, records.chain-gap, records.chain-fork,
 *   records.chain-link, records.chain-contradicted. Warnings: those of clockFindings.
 */
export async function verifyLog(
  raw: readonly unknown[],
  job: string,
  verifier: Verifier,
): Promise<LogReport> {
  const sound = new Map<string, Entry>();
  const bad: FirstBad[] = [];
  for (const [index, one] of raw.entries()) {
    const checked = await checkEntry(one, verifier);
    if (!checked.ok) bad.push(badOf(one, withIndex(checked.error, index)));
    else if (checked.value.job !== job)
      bad.push(badOf(one, withIndex(error("records.other-job", { found: checked.value.job }), index)));
    else if (sound.has(checked.value.id))
      bad.push(badOf(one, withIndex(error("records.entry-twice", { entry: checked.value.id }), index)));
    else sound.set(checked.value.id, checked.value);
  }
  const chains = walkChains(sound.values());
  const broken = [...chains.values()].flatMap(brokenPlaces);
  const all = [...bad, ...broken];
  return {
    sound: [...sound.values()],
    chains,
    firstBad: firstOfEach(all),
    findings: [
      ...all.map(({ issue }) => issue),
      ...[...chains.values()].flatMap(({ followed }) => clockFindings(followed)),
    ],
  };
}

/** The one with the lowest number of each device; of several the one found first. */
function firstOfEach(all: readonly FirstBad[]): readonly FirstBad[] {
  const first = new Map<string, FirstBad>();
  for (const one of all) {
    const known = first.get(one.device);
    if (known === undefined || one.sequence < known.sequence) first.set(one.device, one);
  }
  return [...first].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, bad]) => bad);
}

function brokenPlaces(chain: DeviceChain): readonly FirstBad[] {
  const { device, stop } = chain;
  const at = (sequence: number, issue: Issue): FirstBad => ({ device, sequence, issue });
  const found = chain.missing.map(({ from, to }) =>
    at(from, error("records.chain-gap", { device, from, to })),
  );
  for (const sequence of chain.forks)
    found.push(at(sequence, error("records.chain-fork", { device, sequence })));
  for (const sequence of chain.contradicted)
    found.push(at(sequence, error("records.chain-contradicted", { device, sequence })));
  if (stop?.reason === "link")
    found.push(at(stop.sequence, error("records.chain-link", { device, sequence: stop.sequence })));
  return found;
}

/** Names a bad entry by what it claims to be, which may be anything. */
function badOf(raw: unknown, issue: Issue): FirstBad {
  const claimed = raw as { device?: unknown; sequence?: unknown } | null | undefined;
  const { device, sequence } = claimed ?? {};
  return {
    device: typeof device === "string" ? device : "",
    sequence: typeof sequence === "number" ? sequence : 0,
    issue,
  };
}

/** Entries of a log are counted like lines, from 1. */
const withIndex = (issue: Issue, index: number): Issue => ({
  ...issue,
  place: { ...issue.place, line: index + 1 },
});
