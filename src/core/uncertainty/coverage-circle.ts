import { normalQuantile } from "../num/normal.ts";
import { contract } from "../result.ts";

/** points of the angle integral: as many as a thin ellipse needs, twice what a round one does */
const angles = (ratio: number): number => Math.max(24, Math.ceil(12 / ratio));
const ROUNDS = 30;
/** below this ratio of the axes the angle integral needs more than its points, and the series is as good */
const THIN = 0.1;

/**
 * Radius of the circle around a found point in plan that holds the true one with a probability.
 *
 * Between the factor on a line (1.96 for 95 %) and that of equal axes (2.45). What a table can show as one number, where the
 * ellipse has three.
 *
 * @param semiMajor larger standard deviation, metres, >= 0. @param semiMinor the one square to it.
 * @returns metres; 0 without any spread; NaN for NaN.
 * @throws ContractError if the probability is not between 0 and 1.
 *
 * Frame: plan. Source: bivariate normal in polar coordinates; H. L. Harter 1960 (from memory).
 * Checked against: test/published/circle-radius.
 */
export function coverageCircle(semiMajor: number, semiMinor: number, probability: number): number {
  contract(probability > 0 && probability < 1, `coverageCircle: probability ${probability}`);
  if (semiMajor === 0) return 0;
  const ratio = Math.min(semiMinor / semiMajor, 1);
  if (Number.isNaN(ratio)) return Number.NaN;
  const onLine = normalQuantile((1 + probability) / 2);
  // R^2 = x^2 + y^2: a thin y lengthens R by y^2 / (2 x) on the average
  if (ratio < THIN) return semiMajor * (onLine + (ratio * ratio) / (2 * onLine));
  // exact at both ends, and close enough between them for two or three rounds
  const round = Math.sqrt(-2 * Math.log(1 - probability));
  let radius = Math.sqrt(onLine ** 2 + (round ** 2 - onLine ** 2) * ratio ** 3);
  for (let i = 0; i < ROUNDS; i++) {
    const { inside, density } = insideUnit(ratio, radius);
    const step = (probability - inside) / density;
    radius += step;
    if (Math.abs(step) < 1e-12) break;
  }
  return semiMajor * radius;
}

/** Probability inside a radius and its derivative, for axes 1 and ratio: trapezoids over one period of a smooth integrand. */
function insideUnit(ratio: number, radius: number): { inside: number; density: number } {
  let inside = 0;
  let density = 0;
  const count = angles(ratio);
  for (let i = 0; i < count; i++) {
    const angle = (Math.PI * (i + 0.5)) / count;
    const g = Math.cos(angle) ** 2 + (Math.sin(angle) / ratio) ** 2;
    const left = Math.exp((-radius * radius * g) / 2);
    inside += (1 - left) / g;
    density += radius * left;
  }
  const scale = 1 / (count * ratio);
  return { inside: inside * scale, density: density * scale };
}
