import type { Issue } from "#core";
import { ENTRIES } from "../bag/names.ts";
import { notFitting } from "../bag/not-fitting.ts";
import { error } from "../issue.ts";
import { chainBreaks } from "./chain-breaks.ts";
import type { HeadsOutcome } from "./check-heads.ts";
import { claimOf, type Known } from "./claim-of.ts";
import type { FirstBadEntry } from "./evidence-report.ts";
import { type BagLog, NO_ID } from "./read-log.ts";

/**
 * The first entry that is not the one that the office signed for, where the signed list of ids is still there: its exact place.
 *
 * @returns undefined if the entries are those of the list, in its order.
 *
 * Errors: those of the entry itself, evidence.tail-cut, evidence.entry-missing, evidence.entry-put-in, evidence.entry-moved,
 *   evidence.entry-exchanged.
 */
export function firstAgainstList(log: BagLog, listed: readonly string[]): FirstBadEntry | undefined {
  const { ids, claims, lineIssues } = log;
  const length = Math.max(ids.length, listed.length);
  let at = 0;
  while (at < length && ids[at] === listed[at]) at++;
  if (at === length) return undefined;
  const place = at + 1;
  const [here, expected] = [ids[at], listed[at]];
  const placeOf = { file: ENTRIES, line: place };
  const missing = (issue: Issue) => ({ place, upTo: place, ...knownOf(expected!, log), issue });
  const present = (issue: Issue) => ({ place, upTo: place, ...claimOf(claims[at]), issue });
  if (here === undefined)
    return missing(
      error("evidence.tail-cut", placeOf, { entry: expected!, missing: listed.length - ids.length }),
    );
  const own = lineIssues.get(place);
  if (expected === undefined || (own !== undefined && own.code !== "records.entry-twice"))
    return present(own ?? error("evidence.entry-put-in", placeOf, { entry: here }));
  const isExpectedLater = ids.indexOf(expected, at + 1) !== -1;
  const isHereListed = listed.indexOf(here, at) !== -1;
  if (isExpectedLater && isHereListed)
    return present(error("evidence.entry-moved", placeOf, { entry: here }));
  if (isExpectedLater) return present(own ?? error("evidence.entry-put-in", placeOf, { entry: here }));
  if (isHereListed) return missing(error("evidence.entry-missing", placeOf, { entry: expected }));
  return present(error("evidence.entry-exchanged", placeOf, { entry: here, expected }));
}

/**
 * The same where nothing signed tells the order any more: from what entries say of themselves and of each other, and from the heads
 * that fit and do not fit. It may be no more than two places between which it lies.
 */
export function firstWithoutList(
  log: BagLog,
  heads: Pick<HeadsOutcome, "fitsUpTo" | "failsAt">,
): FirstBadEntry | undefined {
  const entries = log.ids.length;
  const isShort = heads.failsAt !== Infinity && heads.failsAt > entries;
  const [from, upTo] = [heads.fitsUpTo + 1, isShort ? entries + 1 : heads.failsAt];
  const ofLines = [...log.lineIssues].map(([place, issue]) => ({
    // of an entry that stands there twice either may be the one put in
    place: issue.code === "records.entry-twice" ? log.ids.indexOf(log.ids[place - 1]!) + 1 : place,
    upTo: place,
    ...claimOf(log.claims[place - 1]),
    issue,
  }));
  const found = [...ofLines, ...chainBreaks(log)]
    .filter((bad) => bad.place <= upTo && bad.upTo >= from)
    .reduce<FirstBadEntry | undefined>((a, b) => (a === undefined || b.place < a.place ? b : a), undefined);
  if (found !== undefined)
    return { ...found, place: Math.max(found.place, from), upTo: Math.min(found.upTo, upTo) };
  if (upTo === Infinity) return undefined;
  const issue = notFitting({ size: heads.failsAt }, entries, {});
  return { place: from, upTo, issue };
}

/** What the entries that are here tell of one that is not. */
function knownOf(id: string, { sound }: BagLog): Known {
  if (id === NO_ID) return {};
  for (const { entry } of sound) {
    if (entry.previous === id) return { id, device: entry.device, sequence: entry.sequence - 1 };
    const seen = entry.seen.find((end) => end.id === id);
    if (seen !== undefined) return { id, device: seen.device, sequence: seen.sequence };
  }
  return { id };
}
