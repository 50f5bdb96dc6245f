const MAX_TERMS = 100_000;
/** Stands in for a zero denominator; far below any term that occurs. */
const TINY = 1e-300;

/**
 * Value of b0 + a1/(b1 + a2/(b2 + …)), by the modified Lentz method, to the precision of a double.
 *
 * @param firstTerm b0.
 * @param term gives [a_n, b_n] for n = 1, 2, …
 * @returns the value; NaN if it has not settled after 100 000 terms or a term is NaN.
 *
 * Source: Thompson & Barnett, J. Comput. Phys. 64, 1986 (from memory).
 */
export function continuedFraction(firstTerm: number, term: (n: number) => readonly [number, number]): number {
  let value = firstTerm === 0 ? TINY : firstTerm;
  let numerator = value;
  let denominator = 0;
  for (let n = 1; n <= MAX_TERMS; n++) {
    const [a, b] = term(n);
    denominator = b + a * denominator;
    if (denominator === 0) denominator = TINY;
    numerator = b + a / numerator;
    if (numerator === 0) numerator = TINY;
    denominator = 1 / denominator;
    const factor = numerator * denominator;
    value *= factor;
    if (Math.abs(factor - 1) <= Number.EPSILON) return value;
  }
  return Number.NaN;
}
