import { contract } from "../result.ts";

/** What is known of an input quantity, in its own unit. */
export type InputDistribution =
  | { readonly kind: "normal"; readonly mean: number; readonly standardUncertainty: number }
  | { readonly kind: "rectangular"; readonly lower: number; readonly upper: number }
  | { readonly kind: "arcsine"; readonly lower: number; readonly upper: number }
  /** symmetric triangle */
  | { readonly kind: "triangular"; readonly lower: number; readonly upper: number }
  /** rectangle whose ends are themselves known only to +- doubt */
  | {
      readonly kind: "curved-trapezoid";
      readonly lower: number;
      readonly upper: number;
      readonly doubt: number;
    }
  /** scaled and shifted Student's t: mean of few readings, with scale s / sqrt(n) */
  | {
      readonly kind: "student-t";
      readonly mean: number;
      readonly scale: number;
      readonly degreesOfFreedom: number;
    };

/**
 * One value of a distribution made from two independent uniform numbers.
 *
 * @param a, b in (0, 1), neither end included.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clause 6.4 (from memory); Student's t: Bailey, Polar generation of random variates with the
 *   t-distribution, Math. Comp. 62, 1994 (from memory).
 * Checked against: mean and spread in closed form (input-distribution.test.ts), test/published/jcgm-101
 */
export function drawFrom(distribution: InputDistribution, a: number, b: number): number {
  switch (distribution.kind) {
    case "normal":
      return distribution.mean + distribution.standardUncertainty * normalFrom(a, b);
    case "rectangular":
      return distribution.lower + (distribution.upper - distribution.lower) * a;
    case "arcsine":
      return (
        middle(distribution) + ((distribution.upper - distribution.lower) / 2) * Math.cos(2 * Math.PI * a)
      );
    case "triangular":
      return distribution.lower + ((distribution.upper - distribution.lower) / 2) * (a + b);
    case "curved-trapezoid": {
      const { lower, upper, doubt } = distribution;
      const from = lower - doubt + 2 * doubt * a;
      return from + (lower + upper - 2 * from) * b;
    }
    case "student-t": {
      const { mean, scale, degreesOfFreedom: nu } = distribution;
      // nu (a^(-2/nu) - 1), without loss for many degrees of freedom
      return mean + scale * Math.sqrt(nu * Math.expm1((-2 / nu) * Math.log(a))) * Math.cos(2 * Math.PI * b);
    }
  }
}

/**
 * A standard normal number from two uniform ones.
 *
 * Frame: none.
 * Source: Box & Muller, Ann. Math. Stat. 29, 1958 (from memory).
 */
export const normalFrom = (a: number, b: number): number =>
  Math.sqrt(-2 * Math.log(a)) * Math.cos(2 * Math.PI * b);

/**
 * Mean and standard uncertainty of a distribution; the uncertainty of Student's t needs more than 2 degrees.
 *
 * @throws ContractError if a width is negative or degrees of freedom do not allow a standard uncertainty.
 *
 * Frame: none.
 * Source: JCGM 101:2008, table 1 (from memory).
 */
export function momentsOf(distribution: InputDistribution): {
  readonly mean: number;
  readonly standardUncertainty: number;
} {
  switch (distribution.kind) {
    case "normal":
      contract(distribution.standardUncertainty >= 0, "momentsOf: negative standard uncertainty");
      return { mean: distribution.mean, standardUncertainty: distribution.standardUncertainty };
    case "student-t": {
      const { mean, scale, degreesOfFreedom: nu } = distribution;
      contract(scale >= 0 && nu > 2, `momentsOf: scale ${scale}, ${nu} degrees of freedom`);
      return { mean, standardUncertainty: scale * Math.sqrt(nu / (nu - 2)) };
    }
    default: {
      const half = (distribution.upper - distribution.lower) / 2;
      contract(half >= 0, `momentsOf: upper end ${distribution.upper} below ${distribution.lower}`);
      return { mean: middle(distribution), standardUncertainty: Math.sqrt(varianceOf(distribution, half)) };
    }
  }
}

function varianceOf(
  distribution: Exclude<InputDistribution, { readonly kind: "normal" | "student-t" }>,
  half: number,
): number {
  switch (distribution.kind) {
    case "rectangular":
      return (half * half) / 3;
    case "arcsine":
      return (half * half) / 2;
    case "triangular":
      return (half * half) / 6;
    case "curved-trapezoid":
      return (half * half) / 3 + distribution.doubt ** 2 / 9;
  }
}

const middle = ({ lower, upper }: { readonly lower: number; readonly upper: number }): number =>
  lower + (upper - lower) / 2;
