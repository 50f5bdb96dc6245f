import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { type Job, reduceJob, type SurveyRun } from "#core";
import { folderFromFiles, type ReadJob, readJobFolder } from "#formats";
import { foldChains, walkChains } from "#records";
import type { JobNow } from "../jobs/worked-job.ts";
import { togetherView } from "./together-view.ts";
import { tryOut } from "./trial.ts";

const EXAMPLE = join(import.meta.dirname, "../../../../examples/shaft-and-pier");
const ELEMENT = "S07";
let read: ReadJob;

beforeAll(async () => {
  const names = readdirSync(EXAMPLE, { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.\w+$/.test(name),
  );
  const files = new Map(names.map((name) => [name, readFileSync(join(EXAMPLE, name))]));
  read = await readJobFolder(folderFromFiles(files));
});

/** The example as the worker knows it, with further runs of one element. */
function knownWith(further: (run: SurveyRun) => readonly SurveyRun[]): JobNow {
  const job: Job = read.job!;
  const own = job.runs.find(({ elementId }) => elementId === ELEMENT)!;
  const more = { ...job, runs: [...job.runs, ...further(own)] };
  const { elements, runs } = reduceJob(more, { only: [ELEMENT] });
  const chains = walkChains([]);
  return {
    log: { entries: [], chains, state: foldChains(chains) },
    read: { ...read, job: more },
    findings: [],
    results: new Map([[ELEMENT, { key: "", result: elements[0]!, runs }]]),
    work: { phase: "ready", done: 1, total: 1 },
  };
}

describe("runs of one hole beside each other", () => {
  test("a run differs from itself by nothing and agrees with itself", () => {
    const [hole] = togetherView(
      knownWith((run) => [{ ...run, id: "again" }]),
      ELEMENT,
    )!;
    expect(hole!.courses.map(({ run }) => run)).toEqual(["S07-1", "again"]);
    const [difference] = hole!.differences;
    expect(difference!.largestM).toBeCloseTo(0, 9);
    expect(difference!.scatterM).toBeCloseTo(0, 9);
    expect(difference!.agree).toBe(true);
  });

  test("a run that began 200 mm aside differs by 200 mm everywhere, without scatter, and does not agree", () => {
    const aside = (run: SurveyRun): SurveyRun => ({
      ...run,
      id: "aside",
      start: { ...run.start!, north: run.start!.north + 0.2 },
    });
    const [hole] = togetherView(
      knownWith((run) => [aside(run)]),
      ELEMENT,
    )!;
    const [difference] = hole!.differences;
    expect(Math.hypot(difference!.meanAlongM, difference!.meanAcrossM)).toBeCloseTo(0.2, 6);
    expect(difference!.largestM).toBeCloseTo(0.2, 6);
    expect(difference!.scatterM).toBeCloseTo(0, 6);
    expect(difference!.agree).toBe(false);
  });

  test("one run alone has nothing to be compared with", () => {
    const [hole] = togetherView(
      knownWith(() => []),
      ELEMENT,
    )!;
    expect(hole!.differences).toEqual([]);
    expect(hole!.courses[0]!.alone).toBeUndefined();
  });
});

describe("a trial of the computation", () => {
  test("moves nothing where nothing is switched, and something where the tilt zero is left out", () => {
    const now = knownWith(() => []);
    const same = tryOut(now, ELEMENT, {})!;
    expect(same.largestM).toBeCloseTo(0, 12);
    expect(same.verdict).toBe(same.verdictNow);
    const without = tryOut(now, ELEMENT, { without: ["tilt-zero"] })!;
    expect(without.largestM).toBeGreaterThan(0.001);
  });
});
