import { contract } from "../result.ts";
import { continuedFraction } from "./continued-fraction.ts";
import { deviance, stirlingError } from "./gamma.ts";

/**
 * Regularised incomplete beta function I_x(a, b) and its complement, each without cancellation.
 *
 * @param a, b shapes, > 0.
 * @param x from 0 to 1. NaN gives NaN.
 * @param complement 1 - x; to be given where the caller knows it more exactly than the subtraction does.
 * @returns `lower` = I_x(a, b), `upper` = 1 - I_x(a, b) = I_(1-x)(b, a), to about 1e-13 relative.
 * @throws ContractError if a or b is not positive or x lies outside [0, 1].
 *
 * Frame: none.
 * Source: Didonato & Morris, Algorithm 708, ACM Trans. Math. Softw. 18, 1992, eq. 9 (continued fraction) (from memory).
 * Checked against: closed forms for whole a, b (incomplete-beta.test.ts).
 */
export function incompleteBeta(
  a: number,
  b: number,
  x: number,
  complement: number = 1 - x,
): { readonly lower: number; readonly upper: number } {
  if (Number.isNaN(a + b + x + complement)) return { lower: Number.NaN, upper: Number.NaN };
  contract(
    a > 0 && b > 0 && x >= 0 && x <= 1 && complement >= 0 && complement <= 1,
    `incompleteBeta: a = ${a}, b = ${b}, x = ${x}, complement = ${complement}`,
  );
  if (x === 0) return { lower: 0, upper: 1 };
  if (complement === 0) return { lower: 1, upper: 0 };
  if (x > (a + 1) / (a + b + 2)) {
    const turned = fractionPart(b, a, complement, x);
    return { lower: 1 - turned, upper: turned };
  }
  const lower = fractionPart(a, b, x, complement);
  return { lower, upper: 1 - lower };
}

/** I_x(a, b) where the continued fraction converges fast: x below (a + 1)/(a + b + 2). */
function fractionPart(a: number, b: number, x: number, complement: number): number {
  const sum = a + b;
  // x^a (1 - x)^b / B(a, b): Stirling's formula cancels, what is left of it and the two deviances do not.
  const exponent =
    -a * deviance(x * sum, a) -
    b * deviance(complement * sum, b) +
    stirlingError(sum) -
    stirlingError(a) -
    stirlingError(b);
  const prefix = Math.sqrt((a * b) / (2 * Math.PI * sum)) * Math.exp(exponent);
  // This form keeps its digits where x is close to 1; the shorter 26.5.8 of Abramowitz & Stegun does not.
  const numerator = (m: number) =>
    ((a + m - 1) / (a + 2 * m - 1)) * ((sum + m - 1) / (a + 2 * m - 1)) * (m * (b - m) * x * x);
  const denominator = (m: number) =>
    m +
    (m === 0 ? 0 : (m * (b - m) * x) / (a + 2 * m - 1)) +
    ((a + m) / (a + 2 * m + 1)) * (a * complement - b * x + 1 + m * (1 + complement));
  const fraction = continuedFraction(denominator(0), (m) => [numerator(m), denominator(m)]);
  return prefix / fraction;
}
