/** Ways to turn a value, a limit and an uncertainty into a verdict. */
export type DecisionRuleName = "simple" | "guarded" | "four-way";
export const DECISION_RULES: readonly DecisionRuleName[] = ["simple", "guarded", "four-way"];

/** F4: chosen beforehand. */
export interface Decision {
  readonly rule: DecisionRuleName;
  /** probability asked for, (0.5, 1) */
  readonly probability: number;
}
