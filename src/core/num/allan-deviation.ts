import { contract } from "../result.ts";

/** How differences of averages are formed; all read the same on white noise but for their scatter. */
export type AllanEstimator = "overlapping" | "separate" | "modified" | "hadamard" | "overlapping-hadamard";

/**
 * Allan deviation of a series of rates, or one of its relatives, at one averaging time.
 *
 * "separate" compares averages over neighbouring windows that do not overlap; "overlapping" slides the windows
 * by one sample and scatters less; "modified" also tells white from flicker noise at short times; the Hadamard
 * forms take third differences of the angle and are blind to a steady ramp of the rate.
 *
 * @param rates evenly spaced samples, any unit. Shape: n. Finite.
 * @param averaging samples in one window, whole, >= 1.
 * @returns deviation, unit of the rates, and the number of differences it rests on; the deviation is NaN when
 *   the series is too short for even one.
 * @throws ContractError if a rate is not finite or the averaging is not a whole number >= 1.
 *
 * Frame: none.
 * Source: NIST Special Publication 1065 (Riley), sections 5.2 to 5.5 and 5.8 (formulas as reproduced by its test suites).
 * Checked against: test/published/nbs14-allan
 */
export function allanDeviation(
  rates: Float64Array,
  averaging: number,
  estimator: AllanEstimator = "overlapping",
): { readonly deviation: number; readonly differences: number } {
  contract(rates.every(Number.isFinite), "allanDeviation: every rate must be finite");
  return fromAngles(anglesOf(rates), averaging, estimator);
}

/** Angle (sum of the rates about their mean) at the end of each sample, starting with 0. Shape: n + 1. */
export function anglesOf(rates: Float64Array): Float64Array {
  // Taking the mean away changes no difference and keeps the sum small, so that little is lost by rounding.
  let centre = 0;
  for (const rate of rates) centre += rate / rates.length;
  const angles = new Float64Array(rates.length + 1);
  for (let i = 0; i < rates.length; i++) angles[i + 1] = angles[i]! + (rates[i]! - centre);
  return angles;
}

/** As `allanDeviation`, from the angles of `anglesOf`: for many averaging times of one series. */
export function fromAngles(
  angles: Float64Array,
  averaging: number,
  estimator: AllanEstimator,
): { readonly deviation: number; readonly differences: number } {
  contract(Number.isInteger(averaging) && averaging >= 1, `allanDeviation: averaging ${averaging}`);
  const m = averaging;
  const isHadamard = estimator === "hadamard" || estimator === "overlapping-hadamard";
  const order = isHadamard ? 3 : 2;
  const step = estimator === "separate" || estimator === "hadamard" ? m : 1;
  const difference = isHadamard
    ? (i: number) => angles[i + 3 * m]! - 3 * angles[i + 2 * m]! + 3 * angles[i + m]! - angles[i]!
    : (i: number) => angles[i + 2 * m]! - 2 * angles[i + m]! + angles[i]!;
  if (estimator === "modified") return modified(angles.length, m, difference);

  let sum = 0;
  let differences = 0;
  for (let i = 0; i + order * m < angles.length; i += step) {
    sum += difference(i) ** 2;
    differences++;
  }
  const divisor = isHadamard ? 6 : 2;
  return { deviation: Math.sqrt(sum / (divisor * m * m * differences)), differences };
}

/** Mean of m neighbouring second differences, squared: one running sum of m of them. */
function modified(
  count: number,
  m: number,
  difference: (i: number) => number,
): { deviation: number; differences: number } {
  const differences = Math.max(0, count - 3 * m + 1);
  let window = 0;
  for (let i = 0; i < m && differences > 0; i++) window += difference(i);
  let sum = 0;
  for (let j = 0; j < differences; j++) {
    sum += window * window;
    if (j + 1 < differences) window += difference(j + m) - difference(j);
  }
  return { deviation: Math.sqrt(sum / (2 * m ** 4 * differences)), differences };
}
