import type { Language } from "#core";
import { formatNumber } from "#text";

/** Where offsets are larger than this, metres suit a reader better than millimetres. */
const LARGEST_IN_MM = 5;

/** How offsets up to a size are written on axes and rings. */
export interface OffsetUnit {
  readonly name: "mm" | "m";
  write(metres: number, language: Language): string;
}

/** The unit for a drawing whose largest offset is `largestM`; `stepM` is the distance between its ticks. */
export function offsetUnit(largestM: number, stepM: number): OffsetUnit {
  const name = largestM < LARGEST_IN_MM ? "mm" : "m";
  const factor = name === "mm" ? 1000 : 1;
  // as many decimals as the step needs, so that ticks every 0.5 mm do not read 0, 1, 1, 2; steps are 1, 2 or 5 times a power of ten
  const decimals = Math.min(6, Math.max(0, -Math.floor(Math.log10(stepM * factor) + 1e-9)));
  return { name, write: (metres, language) => formatNumber(metres * factor, decimals, language) };
}

const LEADING = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8];

/**
 * The largest round number that is not above `limit`: how many times offsets are drawn larger than levels.
 *
 * @param limit > 0. Below 1 the answer is one over a round number.
 */
export function roundFactor(limit: number): number {
  if (limit < 1) return 1 / roundUp(1 / limit);
  const power = 10 ** Math.floor(Math.log10(limit));
  const candidates = LEADING.map((lead) => lead * power).filter((f) => f <= limit && Number.isInteger(f));
  return Math.max(power <= limit ? power : power / 10, ...candidates);
}

function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const candidates = [...LEADING, 10].map((lead) => lead * power);
  return candidates.find((f) => f >= value && Number.isInteger(f)) ?? 10 * power;
}
