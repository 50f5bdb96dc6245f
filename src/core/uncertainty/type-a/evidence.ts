import type { SourceId } from "../error-source.ts";
import type { TypeAOrigin } from "./type-a-value.ts";

/** What a job does with evidence from its own runs: show it beside the declared values, or put it in their place. */
export type TypeAUse = "report" | "replace";
export const TYPE_A_USES: readonly TypeAUse[] = ["report", "replace"];

/** A standard value that a job's own runs and calibrations show, for one instrument. */
export interface Evidence {
  readonly instrumentId: string;
  /** standard value (k = 1), SI and radians */
  readonly value: number;
  readonly degreesOfFreedom: number;
  readonly origin: TypeAOrigin;
  /** the source that it speaks of; of two, their values together (root of the sum of squares) */
  readonly sources: readonly SourceId[];
  /** runs, or calibrations, that it rests on */
  readonly count: number;
  /** the same value as the budget has it without this evidence, SI and radians */
  readonly declared: number;
  /** whether the budgets of the job use it in place of the declared value */
  readonly used: boolean;
}

/** Fewer degrees of freedom leave a standard value doubtful by more than a fifth: 1 / sqrt(2 n). Common practice, no source. */
export const LEAST_DEGREES_OF_FREEDOM = 10;
