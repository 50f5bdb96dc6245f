import type { Issue } from "#core";
import { continuationOf, type DeviceChain, type Entry } from "#records";
import { ENTRIES } from "../bag/names.ts";
import { error } from "../issue.ts";
import { claimOf, type Known } from "./claim-of.ts";
import type { FirstBadEntry } from "./evidence-report.ts";
import type { BagLog } from "./read-log.ts";

/** Where the chains of devices break, by place in the order of arrival. What a person ruled on is no break. */
export function chainBreaks(log: BagLog): readonly FirstBadEntry[] {
  const places = placesOf(log);
  const ruled = rulingsOf(log.report.chains);
  return [...log.report.chains.values()].flatMap((chain) => breaksOf(chain, places, ruled));
}

function breaksOf(chain: DeviceChain, places: Places, ruled: ReadonlySet<string>): readonly FirstBadEntry[] {
  const { device, missing, passedOver, forks, contradicted, stop } = chain;
  const issueAt = (code: string, sequence: number) => error(code, {}, { device, sequence });
  const standing = (sequence: number, issue: Issue): FirstBadEntry => {
    // of two that claim a number the later one is the one too many
    const place = places.ofNumber(device, sequence).at(-1) ?? places.firstNaming(device, sequence);
    return { place, upTo: place, ...places.at(place, { device, sequence }), issue: onLine(place, issue) };
  };
  const gaps = missing
    .filter((gap) => !passedOver.some(({ from, to }) => from <= gap.from && gap.to <= to))
    .map((gap): FirstBadEntry => {
      const before = places.ofNumber(device, gap.from - 1).at(-1) ?? 0;
      const after = places.ofNumber(device, gap.to + 1)[0] ?? places.firstNaming(device, gap.to);
      const issue = error("records.chain-gap", {}, { device, ...gap });
      const place = Math.min(before + 1, after);
      return { place, upTo: after, device, sequence: gap.from, issue: onLine(after, issue) };
    });
  const open = (sequence: number) => !ruled.has(`${device}/${sequence}`);
  return [
    ...gaps,
    ...forks.filter(open).map((number) => standing(number, issueAt("records.chain-fork", number))),
    ...contradicted
      .filter(open)
      .map((number) => standing(number, issueAt("records.chain-contradicted", number))),
    ...(stop?.reason === "link"
      ? [standing(stop.sequence, issueAt("records.chain-link", stop.sequence))]
      : []),
  ];
}

const onLine = (line: number, issue: Issue): Issue => ({ ...issue, place: { file: ENTRIES, line } });

/** Numbers of chains on which a person ruled, as "device/number". */
function rulingsOf(chains: BagLog["report"]["chains"]): ReadonlySet<string> {
  const rulings = [...chains.values()].flatMap(({ followed }) =>
    followed.map((entry) => continuationOf(entry)),
  );
  return new Set(rulings.flatMap((ruling) => (ruling ? [`${ruling.device}/${ruling.sequence}`] : [])));
}

interface Places {
  ofNumber(device: string, sequence: number): readonly number[];
  /** place of the first entry that says it has seen that number of the device or a later one; 1 if there is none */
  firstNaming(device: string, sequence: number): number;
  at(place: number, otherwise: Known): Known;
}

function placesOf({ sound }: BagLog): Places {
  const numbers = new Map<string, number[]>();
  const naming = new Map<string, { readonly place: number; readonly sequence: number }[]>();
  const entries = new Map<number, Entry>();
  for (const { place, entry } of sound) {
    entries.set(place, entry);
    const key = `${entry.device}/${entry.sequence}`;
    const at = numbers.get(key);
    if (at === undefined) numbers.set(key, [place]);
    else at.push(place);
    for (const { device, sequence } of entry.seen) {
      const named = naming.get(device);
      if (named === undefined) naming.set(device, [{ place, sequence }]);
      else named.push({ place, sequence });
    }
  }
  return {
    ofNumber: (device, sequence) => numbers.get(`${device}/${sequence}`) ?? [],
    firstNaming: (device, sequence) =>
      naming.get(device)?.find((named) => named.sequence >= sequence)?.place ?? 1,
    at: (place, otherwise) => {
      const entry = entries.get(place);
      return entry === undefined ? otherwise : claimOf(entry);
    },
  };
}
