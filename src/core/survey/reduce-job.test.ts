import { describe, expect, test } from "vitest";
import { contextOfRun, gridHeading, jobOf, runOf } from "../../../test/fixtures/hand-made-run.ts";
import { element, request } from "../../../test/fixtures/judged-axis.ts";
import type { ReadingRow } from "../../../test/support/readings.ts";
import type { AccessTube } from "../elements/element.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { ContractError } from "../result.ts";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { reduceJob } from "./reduce-job.ts";
import type { ElementResult } from "./results.ts";

// The element of the fixture: head at 1000 north, 2000 east, level 10 (down -10), toe at level -10: 20 m deep.
const HEAD = element().head;
const plan = request("plan-position", { numbers: { limit_m: 0.4 }, words: { at: "toe" } });
const depths = (to: number, from = 0, step = 1): number[] =>
  Array.from({ length: (to - from) / step + 1 }, (_, i) => from + i * step);
const rowsTo = (to: number, inclinationDeg: number, azimuthDeg: number, from = 0): ReadingRow[] =>
  depths(to, from).map((depthM) => ({
    depthM,
    inclinationRad: inclinationDeg * DEG,
    azimuthRad: azimuthDeg * DEG,
  }));
const straight = (inclinationDeg: number, azimuthDeg: number, changes: Partial<SurveyRun> = {}, to = 20) =>
  runOf("inclination-azimuth", rowsTo(to, inclinationDeg, azimuthDeg), changes);
const tube = (id: string, north: number, east: number, changes: Partial<AccessTube> = {}): AccessTube => ({
  elementId: "P1",
  id,
  head: { north: HEAD.north + north, east: HEAD.east + east, down: HEAD.down },
  offsetInElement: undefined,
  innerDiameterM: 0.05,
  lengthM: 20,
  place: { file: "tubes.csv", line: 2 },
  ...changes,
});
const only = (job: Parameters<typeof reduceJob>[0]): ElementResult => reduceJob(job).elements[0]!;
const lowest = (result: ElementResult) => result.axis[result.axis.length - 1]!;
const verdict = (result: ElementResult) => {
  const { verdict: word, value, reasons } = result.verdicts[0]!;
  return { word, value, reasons: reasons.map((reason) => reason.code) };
};
const jobWith = (runs: readonly SurveyRun[], tubes: readonly AccessTube[] = []) =>
  jobOf({ elements: [element()], criteria: [plan], runs, tubes });

describe("an element from its runs", () => {
  test("[F1] own bore, 1 degree towards 60: 20 sin 1 = 0.349 m off at the toe, within 0.4 m", () => {
    const result = only(jobWith([straight(1, 60)]));
    expect(lowest(result).offsetM).toBeCloseTo(20 * Math.sin(1 * DEG), 9);
    expect(lowest(result).offsetNorthM).toBeCloseTo(10 * Math.sin(1 * DEG), 9);
    expect(lowest(result).northM).toBeCloseTo(HEAD.north + 10 * Math.sin(1 * DEG), 9);
    expect(verdict(result)).toMatchObject({ word: "within", value: expect.closeTo(0.34905, 5) });
    expect(result.verticality?.chordRatio).toBeCloseTo(Math.tan(1 * DEG), 9);
    expect(result.findings).toEqual([]);
  });

  test("a start that was surveyed elsewhere takes the place of the design head", () => {
    const start = {
      north: HEAD.north + 0.2,
      east: HEAD.east,
      down: HEAD.down,
      standardUncertaintyM: undefined,
    };
    const result = only(jobWith([straight(0, 0, { start })]));
    expect(lowest(result).offsetNorthM).toBeCloseTo(0.2, 12);
  });

  test("[F1] four tubes by their as-built heads: each moved to the middle, the mean at equal level", () => {
    const tubes = [tube("A", 0.3, 0), tube("B", 0, 0.3), tube("C", -0.3, 0), tube("D", 0, -0.3)];
    // leans of 1, 2, 3 and 2 degrees north: mean of the tangents times 19.9 m at that level
    const runs = tubes.map(({ id }, i) => straight([1, 2, 3, 2][i]!, 0, { id: `R-${id}`, tubeId: id }));
    const result = only(jobWith(runs, tubes));
    const row = lowest(result);
    const tangents = [1, 2, 3, 2].map((degrees) => Math.tan(degrees * DEG));
    const down = row.downM - HEAD.down;
    expect(row.offsetNorthM).toBeCloseTo((down * tangents.reduce((sum, value) => sum + value, 0)) / 4, 6);
    expect(row.offsetEastM).toBeCloseTo(0, 9);
    // only levels that all four share: the one that leans most ends highest
    expect(down).toBeLessThanOrEqual(20 * Math.cos(3 * DEG));
    expect(down).toBeGreaterThan(18.9);
  });

  test("[F1] tubes with a place in the element show where the axis is, not only how it drifts", () => {
    // pattern put in 0.1 m too far north
    const tubes = [
      tube("A", 0.4, 0, { offsetInElement: { north: 0.3, east: 0 } }),
      tube("B", -0.2, 0, { offsetInElement: { north: -0.3, east: 0 } }),
    ];
    const runs = tubes.map(({ id }) => straight(0, 0, { id: `R-${id}`, tubeId: id }));
    expect(lowest(only(jobWith(runs, tubes))).offsetNorthM).toBeCloseTo(0.1, 12);
    // one of the two alone says the same
    expect(lowest(only(jobWith(runs.slice(0, 1), tubes))).offsetNorthM).toBeCloseTo(0.1, 12);
  });

  test("one tube alone, without a place in the element, is taken as the axis", () => {
    const result = only(jobWith([straight(0, 0, { tubeId: "A" })], [tube("A", 0.05, 0)]));
    // the head of the only tube is the middle of all heads: it stands for the axis where it is
    expect(lowest(result).offsetNorthM).toBeCloseTo(0.05, 12);
  });

  test("heads at different levels: the mean is taken at equal level", () => {
    const low = tube("B", 0, -0.3);
    const tubes = [tube("A", 0, 0.3), { ...low, head: { ...low.head, down: HEAD.down + 2 } }];
    const runs = [straight(2, 0, { id: "R-A", tubeId: "A" }), straight(0, 0, { id: "R-B", tubeId: "B" }, 18)];
    const result = only(jobWith(runs, tubes));
    // stations are those of the lower tube, which ends deepest
    const row = result.axis.find((each) => Math.abs(each.downM - HEAD.down - 10) < 1e-9)!;
    expect(row.offsetNorthM).toBeCloseTo((10 * Math.tan(2 * DEG)) / 2, 9);
    // nothing is said above the head of the lower tube
    expect(result.axis[0]!.downM).toBeGreaterThanOrEqual(HEAD.down + 2);
  });

  test("[D5] several runs in one hole are combined: 1 and 1.2 degrees give 1.1", () => {
    const runs = [straight(1, 0, { id: "R1" }), straight(1.2, 0, { id: "R2" })];
    const result = only(jobWith(runs));
    expect(lowest(result).offsetNorthM).toBeCloseTo(20 * Math.sin(1.1 * DEG), 5);
    expect(result.runIds).toEqual(["R1", "R2"]);
  });

  test("[D5] runs that disagree are told with element, depth and run", () => {
    const off = rowsTo(20, 1, 0).map((row) => (row.depthM === 7 ? { ...row, inclinationRad: 2 * DEG } : row));
    const runs = [
      straight(1, 0, { id: "R1" }),
      runOf("inclination-azimuth", off, { id: "R2" }),
      straight(1, 0, { id: "R3" }),
    ];
    expect(only(jobWith(runs)).findings).toMatchObject([
      {
        code: "survey.runs-disagree",
        severity: "warning",
        values: { element: "P1", depth_m: 7, pass: "R2" },
      },
    ]);
  });

  test("[D5] a close look at the first metres makes no gaps of the usual stations below it", () => {
    const close = runOf(
      "inclination-azimuth",
      depths(6, 0, 0.125).map((depthM) => ({ depthM, inclinationRad: 1 * DEG, azimuthRad: 0 })),
      { id: "R2" },
    );
    expect(only(jobWith([straight(1, 0, { id: "R1" }), close])).gaps).toEqual([]);
  });

  test("the order in which runs and tubes are listed changes nothing, to the last bit (seeds 1 to 10)", () => {
    for (let seed = 1; seed <= 10; seed++) {
      const tubes = [tube("A", 0.3, 0), tube("B", 0, 0.31), tube("C", -0.29, 0.02)];
      const runs = ["A", "A", "B", "C", "C"].map((id, i) =>
        runOf(
          "inclination-azimuth",
          rowsTo(20, 1 + 0.1 * i + 0.03 * seed, 20 * i).map((row) => ({
            ...row,
            depthM: row.depthM! + 0.01 * i,
          })),
          {
            id: `R${i}`,
            tubeId: id,
          },
        ),
      );
      const shuffled = runs.toSorted(
        (a, b) => ((seed * 7 + Number(a.id[1])) % 5) - ((seed * 7 + Number(b.id[1])) % 5),
      );
      const one = only(jobWith(runs, tubes));
      const other = only(jobWith(shuffled, tubes));
      expect(other.axis, `seed ${seed}`).toEqual(one.axis);
    }
  });
});

describe("what is not judged", () => {
  test("an element without a run", () => {
    const result = only(jobWith([]));
    expect(verdict(result)).toEqual({ word: "not-judged", value: Number.NaN, reasons: ["survey.no-run"] });
    expect(result).toMatchObject({ path: undefined, axis: [], verticality: undefined, gaps: [] });
  });

  test("an element whose only run could not be worked out", () => {
    const result = only(jobWith([runOf("keyed-tilt", rowsTo(20, 0, 0))]));
    expect(verdict(result)).toMatchObject({ word: "not-judged", reasons: ["survey.no-usable-run"] });
  });

  const gyro = (id: string, closingDeg: number, turnedDeg = 0): SurveyRun =>
    runOf(
      "tilt-turn",
      depths(20).map((depthM) => ({
        timeS: 60 * depthM,
        depthM,
        tiltXRad: 1 * DEG,
        tiltYRad: 0,
        turnRad: turnedDeg * DEG,
      })),
      { id, opening: gridHeading(90), closing: gridHeading(closingDeg), closureLimitRad: 5 * DEG },
    );

  test("[C4] a run over its misclosure limit gives the axis and no verdict", () => {
    const result = only(jobWith([gyro("R1", 120)]));
    expect(verdict(result)).toMatchObject({
      word: "not-judged",
      value: Number.NaN,
      reasons: ["survey.run-blocked"],
    });
    expect(result.axis.length).toBeGreaterThan(10);
  });

  test("[C4] beside a sound run it neither blocks nor pulls", () => {
    const sound = gyro("R2", 90);
    const both = only(jobWith([gyro("R1", 120), sound]));
    expect(verdict(both).word).toBe("within");
    expect(both.axis).toEqual(only(jobWith([sound])).axis);
  });

  test("[D4] a toe that was not reached: nothing within can be shown of the whole length", () => {
    const result = only(jobWith([straight(0, 0, {}, 12)]));
    expect(verdict(result).word).toBe("not-judged");
    // 2 degrees off at 12 m are 0.42 m: outside whatever the rest does, for a rule on every level
    const everywhere = request("plan-position", { numbers: { limit_m: 0.4 }, words: { at: "every-level" } });
    const outside = only(
      jobOf({ elements: [element()], criteria: [everywhere], runs: [straight(2, 0, {}, 12)] }),
    );
    expect(outside.verdicts[0]).toMatchObject({ verdict: "outside" });
  });

  test("[D4] a top that was not read is a gap: nothing within can be shown", () => {
    const result = only(jobWith([runOf("inclination-azimuth", rowsTo(20, 0, 0, 6))]));
    expect(result.gaps).toEqual([{ fromM: 0, toM: 6 }]);
    expect(verdict(result).word).toBe("not-judged");
  });

  test("a gap in one tube is one of the element, at its level", () => {
    const low = tube("B", 0, -0.3);
    const tubes = [tube("A", 0, 0.3), { ...low, head: { ...low.head, down: HEAD.down + 2 } }];
    const torn = rowsTo(18, 0, 0).filter((row) => !(row.depthM! > 5 && row.depthM! < 9));
    const runs = [
      straight(0, 0, { id: "R-A", tubeId: "A" }),
      runOf("inclination-azimuth", torn, { id: "R-B", tubeId: "B" }),
    ];
    // 5 to 9 m in the lower tube are 7 to 11 m below the head of the other, by whose depths the axis goes
    expect(only(jobWith(runs, tubes)).gaps).toEqual([
      { fromM: expect.closeTo(7, 9), toM: expect.closeTo(11, 9) },
    ]);
  });

  test("[F1] a raker that leans away from its design is told", () => {
    const raked = element({ rakeRad: 10 * DEG, rakeBearingRad: 90 * DEG, kind: "micropile" });
    const told = only(jobOf({ elements: [raked], runs: [straight(10, 265)] })).findings;
    expect(told).toMatchObject([
      { code: "survey.leans-opposite", severity: "error", values: { element: "P1" } },
    ]);
    expect(told[0]!.values["lean_deg"]).toBeCloseTo(10, 6);
    expect(told[0]!.values["bearing_deg"]).toBeCloseTo(265, 6);
    expect(only(jobOf({ elements: [raked], runs: [straight(10, 95)] })).findings).toEqual([]);
  });

  test("[F1] for a raked panel the rake counts, not the direction of the wall", () => {
    const panel = element({
      kind: "panel",
      section: { shape: "rectangle", lengthM: 3, widthM: 0.8, orientationRad: 0 },
      rakeRad: 5 * DEG,
      rakeBearingRad: 90 * DEG,
    });
    const codes = (azimuth: number) =>
      only(jobOf({ elements: [panel], runs: [straight(5, azimuth)] })).findings.map((each) => each.code);
    expect(codes(100)).toEqual([]);
    expect(codes(260)).toEqual(["survey.leans-opposite"]);
  });
});

describe("a whole job", () => {
  const elements = ["P1", "P2", "P3"].map((id) => element({ id }));
  const runs = elements.map(({ id }) => straight(0.5, 0, { id: `R-${id}`, elementId: id }));
  const job = jobOf({ elements, criteria: [plan], runs });

  test("elements and runs stand in the order of the schedule, progress is told after each", () => {
    const told: (readonly [number, number])[] = [];
    const results = reduceJob(job, { onProgress: (done, total) => told.push([done, total]) });
    expect(results.elements.map((each) => each.elementId)).toEqual(["P1", "P2", "P3"]);
    expect(results.runs.map((each) => each.runId)).toEqual(["R-P1", "R-P2", "R-P3"]);
    expect(told).toEqual([
      [1, 3],
      [2, 3],
      [3, 3],
    ]);
  });

  test("only some elements: the same numbers as in the whole", () => {
    const whole = reduceJob(job);
    const some = reduceJob(job, { only: ["P2"] });
    expect(some.elements).toEqual([whole.elements[1]]);
    expect(some.runs).toEqual([whole.runs[1]]);
  });

  test("another method is named in the results", () => {
    const { runs: reduced } = reduceJob(job, { method: "balanced-tangential", only: ["P1"] });
    expect(reduced[0]!.method).toBe("balanced-tangential");
  });

  test("a run in a tube that the job does not have is the caller's mistake", () => {
    expect(() => reduceJob(jobWith([straight(0, 0, { tubeId: "Z" })]))).toThrow(ContractError);
  });

  test("the same job gives the same results, and leaves the job as it was", () => {
    const before = JSON.stringify(job);
    expect(reduceJob(job)).toEqual(reduceJob(job));
    expect(JSON.stringify(job)).toBe(before);
    expect(contextOfRun().top).toEqual(HEAD);
  });
});
