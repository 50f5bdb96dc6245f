import { twoProduct } from "./exact-arithmetic.ts";

/** Below this the power series is used, above it the continued fraction. */
const SERIES_LIMIT = 1.4;

/**
 * Error function, 2/sqrt(pi) times the integral of exp(-t^2) from 0 to x.
 *
 * @returns within [-1, 1], to about 1e-15 relative. NaN stays NaN.
 *
 * Frame: none.
 * Source: DLMF 7.6.2 (series), 7.9.1 (continued fraction) (from memory).
 * Checked against: Abramowitz & Stegun table 7.1 and symmetry (error-function.test.ts).
 */
export function erf(x: number): number {
  if (Math.abs(x) < SERIES_LIMIT) return series(x);
  return x > 0 ? 1 - upper(x) : upper(-x) - 1;
}

/**
 * Complement of the error function, 1 - erf(x), without cancellation for large x.
 *
 * @returns within [0, 2], to about 1e-14 relative as far as doubles reach (x = 26). NaN stays NaN.
 *
 * Frame: none.
 * Source: as `erf`.
 */
export function erfc(x: number): number {
  if (Math.abs(x) < SERIES_LIMIT) return 1 - series(x);
  return x > 0 ? upper(x) : 2 - upper(-x);
}

/** exp(-x^2), with the rounding error of the square put back: it is what limits the far tail. */
export function expMinusSquare(x: number): number {
  const square = twoProduct(x, x);
  return Number.isFinite(square.low) ? Math.exp(-square.high) * (1 - square.low) : Math.exp(-x * x);
}

function series(x: number): number {
  const twice = 2 * x * x;
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > Number.EPSILON * 1e-2 * Math.abs(sum); n++) {
    term *= twice / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * expMinusSquare(x) * sum;
}

/** erfc for x >= 1.4: exp(-x^2)/sqrt(pi) / (x + (1/2)/(x + (2/2)/(x + (3/2)/(x + …)))), from its end. */
function upper(x: number): number {
  if (x > 27.3) return 0; // below the smallest double
  // What is cut off falls as exp(-sqrt(8 n) x): this many terms leave less than a double shows.
  let fraction = x;
  for (let n = 10 + Math.ceil(170 / (x * x)); n >= 1; n--) fraction = x + n / 2 / fraction;
  return expMinusSquare(x) / (Math.sqrt(Math.PI) * fraction);
}
