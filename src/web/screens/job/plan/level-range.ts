import type { ElementRow } from "../../../worker/desk.ts";

/** The levels that the elements of a job reach, and where the ruler has its ticks. Metres, positive up. */
export interface LevelRange {
  readonly topM: number;
  readonly bottomM: number;
  readonly stepM: number;
  readonly ticks: readonly { readonly levelM: number; readonly isLong: boolean }[];
}

const MOST_TICKS = 60;
const NICE_STEPS = [0.5, 1, 2, 5, 10, 20, 50] as const;
const LONG_EVERY = 5;
/** A job of points only still has a level to look at. */
const LEAST_SPAN_M = 1;

/** Undefined where there is no element. */
export function levelRange(elements: readonly ElementRow[]): LevelRange | undefined {
  if (elements.length === 0) return undefined;
  let topM = Number.NEGATIVE_INFINITY;
  let lowestM = Number.POSITIVE_INFINITY;
  for (const { headLevelM, toeLevelM, cutoffLevelM } of elements) {
    topM = Math.max(topM, headLevelM);
    lowestM = Math.min(lowestM, toeLevelM ?? cutoffLevelM ?? headLevelM);
  }
  const bottomM = Math.min(lowestM, topM - LEAST_SPAN_M);
  const tickM = NICE_STEPS.find((step) => (topM - bottomM) / step <= MOST_TICKS) ?? 100;
  const first = Math.ceil(bottomM / tickM);
  const last = Math.floor(topM / tickM);
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => ({
    levelM: (first + i) * tickM,
    isLong: (first + i) % LONG_EVERY === 0,
  }));
  return { topM, bottomM, stepM: 0.1, ticks };
}
