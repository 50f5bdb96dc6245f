import type { Issue, RunResult } from "#core";
import type { RunCheck } from "../desk-review.ts";

/** What was checked of a run, with what was found. Nothing is checked that the readings do not allow. */
export function runChecks(
  result: RunResult | undefined,
  findings: readonly Issue[],
  end: { readonly missing: number; readonly isOpen: boolean },
): readonly RunCheck[] {
  const effect = (step: string) => result?.steps.find((each) => each.step === step)?.effect;
  const has = (code: string) => findings.find((each) => each.code === code);
  const number = (value: unknown) => (typeof value === "number" ? value : Number.NaN);
  const closure = effect("heading-closure");
  const faces = effect("two-face");
  const passes = effect("combine-passes");
  const returned = number(effect("depth")?.["return_misclosure_m"]);
  const apart = has("survey.passes-disagree");
  const gaps = result?.gaps ?? [];
  const check = (
    what: RunCheck["what"],
    unit: RunCheck["unit"],
    isDone: boolean,
    isOdd: boolean,
    found: number,
    rest: { readonly allowed?: number; readonly atM?: number } = {},
  ): RunCheck => ({
    what,
    unit,
    outcome: isDone ? (isOdd ? "look" : "good") : "not-done",
    found,
    allowed: rest.allowed,
    atM: rest.atM,
  });
  const misclosure = Math.abs(number(closure?.["misclosure_deg"]));
  const limit = number(closure?.["limit_deg"]);
  return [
    check("complete", "1", true, end.missing > 0 || end.isOpen, end.missing, { allowed: 0 }),
    check("closure", "deg", Number.isFinite(misclosure), !(misclosure <= limit), misclosure, {
      allowed: limit,
    }),
    check(
      "two-face",
      "deg",
      faces !== undefined,
      has("survey.face-sum") !== undefined,
      number(faces?.["largest_departure_deg"]),
      {
        atM: number(faces?.["largest_at_m"]),
      },
    ),
    check(
      "passes",
      "1",
      passes !== undefined,
      apart !== undefined,
      number(passes?.["stations_read_more_than_once"]),
      {
        ...(apart === undefined ? {} : { atM: number(apart.values["depth_m"]) }),
      },
    ),
    check(
      "depth-return",
      "m",
      Number.isFinite(returned),
      has("survey.depth-return") !== undefined,
      Math.abs(returned),
    ),
    check("gaps", "1", result?.path !== undefined, gaps.length > 0, gaps.length, {
      allowed: 0,
      ...(gaps[0] === undefined ? {} : { atM: gaps[0].fromM }),
    }),
  ];
}
