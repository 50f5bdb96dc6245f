import { integrate } from "../num/integrate.ts";
import { normalBetween, normalDensity } from "../num/normal.ts";
import { contract } from "../result.ts";
import { errorEllipse, type PlanCovariance } from "./error-ellipse.ts";

/** Beyond this many standard deviations nothing of a normal distribution is left for a double. */
const FAR = 9;
/** A spread below this share of the radius or of the other spread counts as none. */
const THIN = 1e-9;

/**
 * Probability that a position in plan lies within a radius of the design point.
 *
 * Right where the straight-line formula Phi((T - d)/u) is not: near the centre, with unequal spreads, and with a
 * spread that is not small against the radius. A point measured on the circle itself is inside with less than one half.
 *
 * @param mean measured offset from the design point, metres.
 * @param covariance of that offset, m^2, with every shared error in it; zero spreads are allowed.
 * @param radius allowance, metres, >= 0.
 * @returns within [0, 1], to 1e-11. A NaN anywhere makes it NaN.
 * @throws ContractError if the radius is negative or the matrix is not a covariance.
 *
 * Frame: site NED, plan.
 * Source: rotation to the principal axes and one quadrature along the major one, as in DiDonato & Jarnagin,
 *   Integration of the general bivariate Gaussian distribution over an offset circle, Math. Comp. 15, 1961 (from memory).
 * Checked against: test/published/offset-circle, test/published/marcum-q
 */
export function probabilityInsideCircle(
  mean: { readonly north: number; readonly east: number },
  covariance: PlanCovariance,
  radius: number,
): number {
  const { semiMajor: sx, semiMinor: sy, majorAzimuth } = errorEllipse(covariance);
  const cosine = Math.cos(majorAzimuth);
  const sine = Math.sin(majorAzimuth);
  const mx = mean.north * cosine + mean.east * sine;
  const my = mean.east * cosine - mean.north * sine;
  if (Number.isNaN(mx + my + sx + sy + radius)) return Number.NaN;
  contract(radius >= 0, `probabilityInsideCircle: radius ${radius}`);
  if (sx <= THIN * radius || sx === 0) return Math.hypot(mx, my) <= radius ? 1 : 0;
  if (sy <= THIN * Math.max(radius, sx)) return insideChord(mx, my, sx, radius);

  // x = R sin t: the ends of the chord, where the height changes fast, become smooth.
  const integrand = (t: number): number => {
    const x = radius * Math.sin(t);
    const height = radius * Math.cos(t);
    const slice = normalBetween((-height - my) / sy, (height - my) / sy);
    return (normalDensity((x - mx) / sx) / sx) * slice * height;
  };
  const quarter = Math.PI / 2;
  const alongBreaks = [-FAR, -3, 0, 3, FAR].map((k) => angleOf(mx + k * sx, radius));
  const acrossBreaks = [-FAR, -3, 0, 3, FAR].flatMap((k) => {
    const t = Math.acos(Math.min(1, Math.abs(my + k * sy) / radius)); // where the height reaches the flank
    return [t, -t];
  });
  const probability = integrate(integrand, [-quarter, ...alongBreaks, ...acrossBreaks, quarter]);
  return Math.min(1, Math.max(0, probability));
}

/** All the spread lies along one line at a distance my from the centre. */
function insideChord(mx: number, my: number, sx: number, radius: number): number {
  const half = Math.sqrt((radius - my) * (radius + my));
  return Math.abs(my) > radius ? 0 : normalBetween((-half - mx) / sx, (half - mx) / sx);
}

const angleOf = (x: number, radius: number): number => Math.asin(Math.min(1, Math.max(-1, x / radius)));
