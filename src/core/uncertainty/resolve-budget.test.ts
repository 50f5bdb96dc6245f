import { describe, expect, test } from "vitest";
import { gridHeading, runOf } from "../../../test/fixtures/hand-made-run.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { instrumentClassOf } from "./instrument-class.ts";
import { type BudgetGrounds, resolveBudget } from "./resolve-budget.ts";
import type { Evidence } from "./type-a/evidence.ts";

const budgetOf = (run: SurveyRun, changes: Partial<BudgetGrounds> = {}) =>
  resolveBudget({
    run,
    instrumentClass: instrumentClassOf("mems-standard")!,
    ofInstrument: [],
    calibrations: [],
    evidence: [],
    ...changes,
  });
const declared = (source: string, value: number) => ({ source, value, distribution: undefined });
const gyro = (changes: Partial<SurveyRun> = {}) =>
  runOf("tilt-turn", [], { opening: gridHeading(0), ...changes });
const shown: Evidence = {
  instrumentId: "probe",
  sources: ["tilt-noise", "seating"],
  value: 0.05,
  degreesOfFreedom: 34.2,
  origin: "double-runs",
  count: 2,
  declared: 0.01,
  used: true,
};

describe("[E1] the budget of a run", () => {
  test("the run's word counts before evidence, evidence before the instrument's, that before the class", () => {
    const ofInstrument = [declared("tilt-noise", 0.03)];
    expect(budgetOf(gyro()).get("tilt-noise")?.from).toBe("class mems-standard");
    expect(budgetOf(gyro(), { ofInstrument }).get("tilt-noise")).toMatchObject({
      value: 0.03,
      from: "job, instrument",
    });
    const evidence = budgetOf(gyro(), { ofInstrument, evidence: [shown] });
    expect(evidence.get("tilt-noise")?.from).toBe("double runs of the job, 34 degrees of freedom");
    const own = gyro({ declaredErrors: [declared("tilt-noise", 0.07)] });
    expect(budgetOf(own, { ofInstrument, evidence: [shown] }).get("tilt-noise")).toMatchObject({
      value: 0.07,
      from: "job, run",
    });
  });

  test("evidence of two sources together: the first as declared, the second what is left; less than the first leaves nothing", () => {
    const ofInstrument = [declared("tilt-noise", 0.03)];
    const more = budgetOf(gyro(), { ofInstrument, evidence: [shown] });
    expect(more.get("tilt-noise")?.value).toBe(0.03);
    expect(more.get("seating")?.value).toBeCloseTo(0.04, 14);
    const less = budgetOf(gyro(), { ofInstrument, evidence: [{ ...shown, value: 0.02 }] });
    expect(less.get("tilt-noise")?.value).toBe(0.02);
    expect(less.has("seating")).toBe(false);
  });

  test("sources that cannot act in a run of this kind, and values of 0, are left out", () => {
    const keyed = budgetOf(runOf("keyed-tilt", []));
    expect(keyed.has("gyro-noise")).toBe(false);
    expect(keyed.has("groove-bearing")).toBe(true);
    expect(budgetOf(gyro({ declaredErrors: [declared("seating", 0)] })).has("seating")).toBe(false);
    expect(budgetOf(gyro({ declaredErrors: [declared("no-such-source", 1)] })).has("tilt-noise")).toBe(true);
  });

  test("[C6] the declination of ties and of azimuths counts, and stands apart from the heading's own part", () => {
    const tie = { ...gridHeading(0, 0.2), declinationUncertaintyRad: 0.006 };
    expect(budgetOf(gyro({ ties: [tie] })).get("declination")?.value).toBe(0.006);
    const azimuths = runOf("inclination-azimuth", [], {
      azimuthUncertaintyRad: 0.01,
      azimuthDeclinationUncertaintyRad: 0.007,
    });
    expect(budgetOf(azimuths).get("azimuth-bias")?.value).toBe(0.01);
    expect(budgetOf(azimuths).get("declination")?.value).toBe(0.007);
    expect(budgetOf(gyro()).has("declination")).toBe(false);
  });
});
