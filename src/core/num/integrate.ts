import { contract } from "../result.ts";

/** Half the nodes and weights of the Gauss-Legendre rule; the other half mirrors them. */
const RULE = gaussLegendreHalf(20);
/** Pieces beyond the first ones that the interval may be cut into: where rounding is what is left, stop. */
const MAX_CUTS = 300;

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly error: number;
}

/**
 * Integral of a function over an interval, by halving the worst piece until two estimates agree.
 *
 * The breaks tell where the function changes fast (the flanks of a narrow peak, a kink): a peak between nodes of
 * the first estimate would otherwise go unseen.
 *
 * @param f finite on the interval. A NaN from it makes the result NaN.
 * @param breaks ends of the interval and places of change in between, rising or not; those outside the first
 *   and last are not used. Shape: n >= 2; the first is the lower end, the last the upper.
 * @param tolerance absolute, for the whole; 1e-12 when left out.
 * @throws ContractError with fewer than two breaks or an end that is not finite.
 *
 * Frame: none.
 * Source: Davis & Rabinowitz, Methods of Numerical Integration, ch. 6 (from memory).
 */
export function integrate(f: (x: number) => number, breaks: readonly number[], tolerance = 1e-12): number {
  const lower = breaks[0]!;
  const upper = breaks[breaks.length - 1]!;
  contract(
    breaks.length >= 2 && Number.isFinite(lower) && Number.isFinite(upper),
    `integrate: breaks ${breaks.join(", ")}`,
  );
  const places = [lower, ...breaks.filter((x) => x > lower && x < upper).sort((a, b) => a - b), upper];
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < places.length; i++) pieces.push(piece(f, places[i]!, places[i + 1]!));
  for (let cuts = 0; cuts < MAX_CUTS; cuts++) {
    // A missing value makes the comparison false and ends the search; the sum below then is missing too.
    if (!(pieces.reduce((sum, { error }) => sum + error, 0) > tolerance)) break;
    const worst = pieces.reduce((found, { error }, i) => (error > pieces[found]!.error ? i : found), 0);
    const { from, to } = pieces[worst]!;
    const middle = from + (to - from) / 2;
    pieces.splice(worst, 1, piece(f, from, middle), piece(f, middle, to));
  }
  return pieces.reduce((sum, { value }) => sum + value, 0);
}

/** Estimate in two halves, with its difference from the estimate in one. */
function piece(f: (x: number) => number, from: number, to: number): Piece {
  const middle = from + (to - from) / 2;
  const value = oneStep(f, from, middle) + oneStep(f, middle, to);
  return { from, to, value, error: Math.abs(value - oneStep(f, from, to)) };
}

function oneStep(f: (x: number) => number, a: number, b: number): number {
  const centre = a + (b - a) / 2;
  const half = (b - a) / 2;
  let sum = 0;
  for (const { node, weight } of RULE) sum += weight * (f(centre + half * node) + f(centre - half * node));
  return half * sum;
}

/** Positive nodes of the rule with an even number of nodes, by Newton's method on the Legendre polynomial. */
function gaussLegendreHalf(count: number): readonly { node: number; weight: number }[] {
  return Array.from({ length: count / 2 }, (_, i) => {
    let node = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 6; step++) {
      let previous = 1;
      let value = node;
      for (let k = 2; k <= count; k++) {
        const next = ((2 * k - 1) * node * value - (k - 1) * previous) / k;
        previous = value;
        value = next;
      }
      slope = (count * (node * value - previous)) / (node * node - 1);
      node -= value / slope;
    }
    return { node, weight: 2 / ((1 - node * node) * slope * slope) };
  });
}
