import { contract } from "../result.ts";

const MAX_STEPS = 200;

/**
 * Finds where a continuous function changes sign inside a bracket, by Brent's method.
 *
 * @param f continuous on [lower, upper], with values of opposite sign (or zero) at the ends.
 * @param tolerance half width of the final bracket; never finer than the spacing of doubles allows.
 * @returns the abscissa. NaN from `f` makes the result NaN.
 * @throws ContractError if the ends do not bracket a change of sign.
 *
 * Frame: none.
 * Source: Brent, Algorithms for Minimization without Derivatives, 1973, ch. 4 (from memory).
 */
export function findRoot(f: (x: number) => number, lower: number, upper: number, tolerance = 0): number {
  let a = lower;
  let b = upper;
  let fa = f(a);
  let fb = f(b);
  if (Number.isNaN(fa) || Number.isNaN(fb)) return Number.NaN;
  contract(fa * fb <= 0, `findRoot: no change of sign between ${lower} (${fa}) and ${upper} (${fb})`);
  let c = a;
  let fc = fa;
  let step = b - a;
  let previous = step;
  for (let i = 0; i < MAX_STEPS; i++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const slack = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= slack || fb === 0) return b;
    [step, previous] = nextStep({ a, b, c, fa, fb, fc, step, previous, slack, half });
    a = b;
    fa = fb;
    b += Math.abs(step) > slack ? step : Math.sign(half) * slack;
    fb = f(b);
    if (Number.isNaN(fb)) return Number.NaN;
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      previous = step;
    }
  }
  return b;
}

interface Bracket {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly fa: number;
  readonly fb: number;
  readonly fc: number;
  readonly step: number;
  readonly previous: number;
  readonly slack: number;
  readonly half: number;
}

/** The next step and the one before it: interpolation where it is safe, else halving. */
function nextStep(s: Bracket): [number, number] {
  const halving: [number, number] = [s.half, s.half];
  if (!(Math.abs(s.previous) >= s.slack && Math.abs(s.fa) > Math.abs(s.fb))) return halving;
  const ratio = s.fb / s.fa;
  let p: number;
  let q: number;
  if (s.a === s.c) {
    p = 2 * s.half * ratio;
    q = 1 - ratio;
  } else {
    const u = s.fa / s.fc;
    const v = s.fb / s.fc;
    p = ratio * (2 * s.half * u * (u - v) - (s.b - s.a) * (v - 1));
    q = (u - 1) * (v - 1) * (ratio - 1);
  }
  if (p > 0) q = -q;
  else p = -p;
  const isSafe = 2 * p < Math.min(3 * s.half * q - Math.abs(s.slack * q), Math.abs(s.previous * q));
  return isSafe ? [p / q, s.step] : halving;
}
