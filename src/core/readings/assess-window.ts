import { blockMeans } from "../num/block-means.ts";
import { fitLine } from "../num/fit-line.ts";
import { mean } from "../num/moments.ts";
import { judgeSteadiness, type SteadinessLimits, type UnsteadyReason } from "../num/steadiness.ts";
import { contract } from "../result.ts";

/** A window of raw readings, judged. */
export interface AssessedWindow {
  /** unit of the values; NaN for an empty window */
  readonly mean: number;
  /** of the mean, allowing for the dependence of neighbours; NaN with fewer than 8 readings */
  readonly standardError: number;
  /** unit of the values per second; NaN with fewer than 8 readings or without time between them */
  readonly slope: number;
  /** of the values, or of the means of blocks in a long window */
  readonly vonNeumann: number;
  readonly steady: boolean;
  /** empty when steady */
  readonly why: readonly UnsteadyReason[];
}

/** A window is judged by so many means of neighbouring readings, to nearly twice as many. */
const BLOCKS = 64;

/**
 * Judges whether a window of raw readings is at rest, and gives its mean with an honest standard error.
 *
 * Readings that come fast are alike because the sensor smooths them, not because the probe moves. A window of 128 readings
 * or more is therefore cut into 64 to 127 blocks of equal length, and their means are judged: what dies out within a
 * block does no harm, what lasts longer is seen. The standard error comes from the same means.
 *
 * @param values any unit, evenly spaced. Shape: n.
 * @param times seconds, not falling. Shape: n.
 * @param limits in the unit of the values; `drift` is the change over the whole window.
 * @throws ContractError if the lengths differ or a limit makes no sense.
 *
 * Frame: none.
 * Source: rule C3, docs/method/steadiness.md. Batch means: common practice of simulation output analysis, no source.
 * Checked against: test/published/nist-strd-univariate (Mavro is refused), simulated white and autoregressive noise.
 */
export function assessWindow(
  values: Float64Array,
  times: Float64Array,
  limits: SteadinessLimits,
): AssessedWindow {
  const n = values.length;
  contract(times.length === n, `assessWindow: ${n} values, ${times.length} times`);
  const size = n < 2 * BLOCKS ? 1 : Math.floor(n / BLOCKS);
  const blocks = size === 1 ? values : blockMeans(values, size);
  const blockTimes = size === 1 ? times : blockMeans(times, size);
  const judged = judgeSteadiness(blocks, limits);
  const series = judged.mean;
  const hasTime = series !== undefined && blockTimes[blocks.length - 1]! > blockTimes[0]!;
  return {
    mean: n === 0 ? Number.NaN : mean(values),
    // readings behind the last whole block are in the mean but not in the blocks
    standardError: (series?.standardError ?? Number.NaN) * Math.sqrt((blocks.length * size) / n),
    slope: hasTime ? fitLine(blockTimes, blocks).slope : Number.NaN,
    vonNeumann: judged.vonNeumann,
    steady: judged.state === "steady",
    why: judged.reasons,
  };
}
