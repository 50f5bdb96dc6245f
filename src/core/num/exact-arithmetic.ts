/** A number as an unevaluated sum `high + low`, `low` at most half a unit in the last place of `high`. */
export interface DoubleDouble {
  readonly high: number;
  readonly low: number;
}

/** The factor 2^27 + 1 that cuts a double into two halves of 26 bits. */
const SPLITTER = 134217729;

/**
 * The sum of two doubles with its rounding error.
 *
 * Source: Knuth, The Art of Computer Programming vol. 2, section 4.2.2, theorem B (from memory).
 */
export function twoSum(a: number, b: number): DoubleDouble {
  const high = a + b;
  const part = high - a;
  return { high, low: a - (high - part) + (b - part) };
}

/**
 * The product of two doubles with its rounding error; for magnitudes below 2^996.
 *
 * Source: Dekker, A floating-point technique for extending the available precision, Numer. Math. 18, 1971
 * (from memory).
 */
export function twoProduct(a: number, b: number): DoubleDouble {
  const high = a * b;
  const a1 = SPLITTER * a - (SPLITTER * a - a);
  const b1 = SPLITTER * b - (SPLITTER * b - b);
  const a2 = a - a1;
  const b2 = b - b1;
  return { high, low: a2 * b2 - (high - a1 * b1 - a2 * b1 - a1 * b2) };
}

/**
 * Running sum with its rounding errors gathered apart: as good as twice the working precision, rounded once.
 *
 * Used where the sum is far smaller than its terms (residuals, means of large numbers).
 * Source: Ogita, Rump & Oishi, Accurate sum and dot product, SIAM J. Sci. Comput. 26, 2005 (from memory).
 */
export class ExactSum {
  #high = 0;
  #low = 0;

  /** Adds one number. */
  add(value: number): void {
    const sum = twoSum(this.#high, value);
    this.#high = sum.high;
    this.#low += sum.low;
  }

  /** Adds `a * b` without rounding the product. */
  addProduct(a: number, b: number): void {
    const product = twoProduct(a, b);
    this.add(product.high);
    this.#low += product.low;
  }

  /** The sum so far, rounded to a double. */
  get value(): number {
    return this.#high + this.#low;
  }
}
