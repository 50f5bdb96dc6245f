import { contract } from "../result.ts";
import { findRoot } from "./find-root.ts";
import { integrate } from "./integrate.ts";
import { mean, sampleVariance } from "./moments.ts";
import { studentTQuantile } from "./student-t.ts";

/** From this length on the symmetric beta distribution agrees with the exact one to 2e-5, also at 0.1 %. */
const BETA_FROM = 60;

/**
 * Von Neumann's ratio: sum of squared differences of neighbours over sum of squared differences to the mean.
 *
 * About 2 for values in random order, small for a drift or a slow swing, large for an alternation.
 *
 * @param values any unit. Shape: n, n >= 2. A NaN among them, or all equal, makes the ratio NaN.
 * @throws ContractError if n < 2.
 *
 * Frame: none.
 * Source: von Neumann, Distribution of the ratio of the mean square successive difference to the variance,
 *   Ann. Math. Stat. 12, 1941 (from memory).
 * Checked against: test/published/series-tests
 */
export function vonNeumannRatio(values: ArrayLike<number>): number {
  const n = values.length;
  contract(n >= 2, `vonNeumannRatio: needs at least 2 values, got ${n}`);
  const centre = mean(values);
  let successive = 0;
  for (let i = 1; i < n; i++) successive += (values[i]! - centre - (values[i - 1]! - centre)) ** 2;
  return successive / (sampleVariance(values) * (n - 1));
}

/**
 * The ratio that independent normal values in random order fall below with the given probability.
 *
 * Exact below 60 values, from there on by a symmetric beta distribution with the exact variance.
 *
 * @param count number of values, >= 4.
 * @param probability between 0 and 1, usually 0.05, 0.01 or 0.001.
 * @throws ContractError if count or probability is out of range.
 *
 * Frame: none.
 * Source: quadratic form with eigenvalues 4 sin^2(pi j / 2n) (von Neumann 1941), inverted by the integral of Imhof,
 *   Biometrika 48, 1961; mean 2 and variance 4 (n - 2) / (n^2 - 1) of the approximation (all from memory).
 * Checked against: test/published/series-tests
 */
export function vonNeumannLimit(count: number, probability: number): number {
  contract(Number.isInteger(count) && count >= 4, `vonNeumannLimit: ${count} values`);
  contract(probability > 0 && probability < 1, `vonNeumannLimit: probability ${probability}`);
  if (count >= BETA_FROM) {
    // Q/2 - 1 = t / sqrt(nu + t^2) with Student's t: symmetric on (-1, 1), nu chosen so that the variance is right.
    const nu = (count * count - 1) / (count - 2) - 1;
    const t = studentTQuantile(probability, nu);
    return 2 + (2 * t) / Math.sqrt(nu + t * t);
  }
  const eigenvalues = Float64Array.from(
    { length: count - 1 },
    (_, j) => 4 * Math.sin((Math.PI * (j + 1)) / (2 * count)) ** 2,
  );
  const least = eigenvalues[0]!;
  const largest = eigenvalues[count - 2]!;
  return findRoot((ratio) => probabilityBelow(eigenvalues, ratio) - probability, least, largest, 1e-7);
}

/** P(sum of (lambda_j - ratio) z_j^2 < 0): Imhof's integral, its endless range folded into (0, 1). */
function probabilityBelow(eigenvalues: Float64Array, ratio: number): number {
  const weights = eigenvalues.map((lambda) => lambda - ratio);
  const size = Math.sqrt(weights.reduce((sum, w) => sum + w * w, 0));
  const integrand = (t: number): number => {
    const share = t / (1 - t);
    const u = (share * share) / size;
    let angle = 0;
    let logGrowth = 0;
    for (const w of weights) {
      angle += Math.atan(w * u);
      logGrowth += Math.log1p((w * u) ** 2);
    }
    // du/u = 2 dt / (t (1 - t))
    return (2 * Math.sin(angle / 2) * Math.exp(-logGrowth / 4)) / (t * (1 - t));
  };
  return 0.5 - integrate(integrand, [0, 0.5, 1], 1e-9) / Math.PI;
}
