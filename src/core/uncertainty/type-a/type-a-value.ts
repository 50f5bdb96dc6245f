/** A standard uncertainty found by statistics from what was measured on the site (type A, JCGM 100:2008 4.2). */
export interface TypeAValue {
  /** standard value (k = 1), in the unit of what it was made from */
  readonly value: number;
  /** how well it is known: its own relative standard uncertainty is about 1 / sqrt(2 degrees of freedom) */
  readonly degreesOfFreedom: number;
  /** what it was made from */
  readonly from: TypeAOrigin;
}

export type TypeAOrigin = "double-runs" | "face-sums" | "closures" | "allan-curve";
