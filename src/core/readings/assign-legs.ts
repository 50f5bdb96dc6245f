import { median } from "../num/median.ts";
import type { CondenseOptions, StopReading } from "./continuous-log.ts";
import type { Leg } from "./survey-run.ts";

/** Readings closer to the highest one than half a usual step are at the top, but at least and at most so many metres: the depth
 * device does not come back to where it began. Common practice, no source. */
const TOP_AT_LEAST_M = 0.05;
const TOP_AT_MOST_M = 0.3;

/** A reading and the leg it serves in; a reading at the top may serve twice. */
export interface StopInLeg {
  readonly stop: StopReading;
  readonly leg: Leg;
}

/**
 * Says which leg each reading of a continuous log belongs to, from the course of the depth.
 *
 * The first reading, if at the top, is the opening; the last one, if at the top and the run closes, the closing reference.
 * Each visit to the top divides the run; between two visits readings down to the deepest belong to the way down, those after
 * it to the way up. The reading at the top before a way down, and the first one after a way up, are stations as well. Where a
 * heading is known at the top in between, it holds at the last reading of the visit on the face of its first.
 *
 * @param stops in the order of time. Where the log itself names legs, they are kept and nothing is worked out.
 *
 * Frame: none. Source: docs/method/steadiness.md.
 */
export function assignLegs(
  stops: readonly StopReading[],
  options: Pick<CondenseOptions, "closes" | "ties">,
): readonly StopInLeg[] {
  if (stops.some(({ leg }) => leg !== "")) return stops.map((stop) => ({ stop, leg: stop.leg }));
  const topM = stops.reduce((least, { depthM }) => Math.min(least, depthM), Infinity) + topBand(stops);
  const visits = groupsOf(stops, ({ depthM }) => depthM <= topM);
  let tiesLeft = options.ties;
  return visits.flatMap(({ isAtTop, members }, index): readonly StopInLeg[] => {
    if (!isAtTop) return alongHole(members);
    const isFirst = index === 0;
    const isLast = index === visits.length - 1;
    const cameUp = !isFirst && endsOnTheWayUp(visits[index - 1]!.members);
    const isTied = !isFirst && !isLast && tiesLeft > 0;
    if (isTied) tiesLeft -= 1;
    return atTop(members, { isFirst, isTied, cameUp, goesDown: !isLast, closes: isLast && options.closes });
  });
}

function topBand(stops: readonly StopReading[]): number {
  const steps = stops.flatMap(({ depthM }, i) => (i === 0 ? [] : Math.abs(depthM - stops[i - 1]!.depthM)));
  const real = steps.filter((step) => step > TOP_AT_LEAST_M);
  const usual = real.length === 0 ? 0 : median(real);
  return Math.min(TOP_AT_MOST_M, Math.max(TOP_AT_LEAST_M, usual / 2));
}

interface Visit {
  readonly isFirst: boolean;
  readonly isTied: boolean;
  readonly cameUp: boolean;
  readonly goesDown: boolean;
  readonly closes: boolean;
}

function atTop(members: readonly StopReading[], visit: Visit): readonly StopInLeg[] {
  const first = members[0]!;
  const last = members[members.length - 1]!;
  const onSameFace = members.filter(({ face }) => face === first.face);
  return [
    ...(visit.isFirst ? [{ stop: first, leg: "open" as const }] : []),
    ...(visit.cameUp ? [{ stop: first, leg: "up" as const }] : []),
    ...(visit.isTied ? [{ stop: onSameFace[onSameFace.length - 1]!, leg: "tie" as const }] : []),
    ...(visit.goesDown ? [{ stop: last, leg: "down" as const }] : []),
    ...(visit.closes ? [{ stop: last, leg: "close" as const }] : []),
  ];
}

function alongHole(members: readonly StopReading[]): readonly StopInLeg[] {
  const deepest = indexOfDeepest(members);
  return members.map((stop, i) => ({ stop, leg: i <= deepest ? "down" : "up" }));
}

const endsOnTheWayUp = (members: readonly StopReading[]): boolean =>
  indexOfDeepest(members) < members.length - 1;

function indexOfDeepest(stops: readonly StopReading[]): number {
  let deepest = 0;
  for (let i = 1; i < stops.length; i++) if (stops[i]!.depthM > stops[deepest]!.depthM) deepest = i;
  return deepest;
}

/** Neighbours that are all at the top or all below it. */
function groupsOf(
  stops: readonly StopReading[],
  isTop: (stop: StopReading) => boolean,
): readonly { readonly isAtTop: boolean; readonly members: readonly StopReading[] }[] {
  const groups: { isAtTop: boolean; members: StopReading[] }[] = [];
  for (const stop of stops) {
    const isAtTop = isTop(stop);
    const group = groups[groups.length - 1];
    if (group?.isAtTop === isAtTop) group.members.push(stop);
    else groups.push({ isAtTop, members: [stop] });
  }
  return groups;
}
