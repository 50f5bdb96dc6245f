import { type Chains, checkSeal, type DeviceChain, type Entry, type JobState, type Verifier } from "#records";
import { ENTRIES } from "../bag/names.ts";
import type { PlacedSeal, WhatEntriesDo } from "../bag/what-entries-do.ts";
import { error } from "../issue.ts";
import type { SealInEvidence } from "./evidence-report.ts";

/** Entries looked at for all seals together: far more than any job needs, and a limit to what a hostile file can cost. */
const MAX_ENTRIES_LOOKED_AT = 5_000_000;

/**
 * Checks every seal in the log.
 *
 * Errors: those of checkSeal, each at the line of its sign-off; evidence.seal-not-checked.
 */
export async function checkSeals(
  { seals, about }: WhatEntriesDo,
  chains: Chains,
  verifier: Verifier,
  state: JobState,
): Promise<readonly SealInEvidence[]> {
  const counting = new Map(
    [...chains.values()].flatMap(({ followed }) => followed.map((one) => [one.id, one])),
  );
  const checked: SealInEvidence[] = [];
  let lookedAt = 0;
  for (const placed of seals) {
    const thing = placed.seal.statement.about;
    const ids = about.get(thing) ?? new Set<string>();
    lookedAt += ids.size;
    const outcome =
      lookedAt > MAX_ENTRIES_LOOKED_AT
        ? { ok: false as const, error: error("evidence.seal-not-checked", {}, { about: thing }) }
        : await checkSeal(placed.seal, chainsAbout(ids, counting, chains), state, verifier);
    checked.push({
      ...shownOf(placed),
      fits: outcome.ok,
      ...(outcome.ok ? {} : { issue: { ...outcome.error, place: { file: ENTRIES, line: placed.place } } }),
    });
  }
  return checked;
}

const shownOf = ({ place, seal }: PlacedSeal) => {
  const { about, meaning, person, name, at } = seal.statement;
  return { place, about, meaning, person, name, at, key: seal.public_key };
};

/** The chains without what is about other things: a seal looks at every entry that it is given. */
function chainsAbout(ids: ReadonlySet<string>, counting: ReadonlyMap<string, Entry>, chains: Chains): Chains {
  const byDevice = new Map<string, Entry[]>();
  for (const id of ids) {
    const entry = counting.get(id);
    if (entry === undefined) continue;
    const own = byDevice.get(entry.device);
    if (own === undefined) byDevice.set(entry.device, [entry]);
    else own.push(entry);
  }
  const devices = [...byDevice].sort(([a], [b]) => (a < b ? -1 : 1));
  return new Map(
    devices.map(([device, own]): [string, DeviceChain] => [
      device,
      { ...chains.get(device)!, followed: own.sort((a, b) => a.sequence - b.sequence) },
    ]),
  );
}
