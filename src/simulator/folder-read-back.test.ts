import { describe, expect, test } from "vitest";
import { type Job, type Readings, reduceJob } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { namedScenario } from "./read-scenario.ts";
import type { Scenario } from "./scenario.ts";
import { writeJobFolder } from "./write-job-folder.ts";

async function readBack(scenario: Scenario, seed: number): Promise<{ job: Job; findings: string[] }> {
  const encoder = new TextEncoder();
  const { files } = writeJobFolder(scenario, seed);
  const bytes = new Map([...files].map(([name, text]) => [name, encoder.encode(text)]));
  const { job, findings, unusableRuns } = await readJobFolder(folderFromFiles(bytes));
  expect(unusableRuns).toEqual([]);
  if (job === undefined) throw new Error(JSON.stringify(findings));
  return { job, findings: findings.map(({ code, place }) => `${code} ${place.file}`) };
}

function made(id: string, seed = 2026): Scenario {
  const result = namedScenario(id, {}, seed);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const NUMBERS = [
  "timeS",
  "depthM",
  "depthCounts",
  "tiltXRad",
  "tiltYRad",
  "turnRad",
  "accX",
  "accY",
  "accZ",
  "inclinationRad",
  "azimuthRad",
  "temperatureC",
] as const satisfies readonly (keyof Readings)[];

describe("a simulated folder, read as any other job", () => {
  test("the example site gives no findings but the gap that was made in it", async () => {
    const { job, findings } = await readBack(made("example-site"), 2026);
    expect(findings).toEqual(["formats.depth-step readings/P02B-1.csv"]);
    expect(job.runs).toHaveLength(made("example-site").runs.length);
  });

  test("runs come back as they were simulated", async () => {
    const scenario = made("example-site");
    const { job } = await readBack(scenario, 2026);
    const { runs } = writeJobFolder(scenario, 2026);
    for (const [k, { run }] of runs.entries()) {
      const read = job.runs[k]!;
      for (const name of NUMBERS)
        for (let i = 0; i < run.readings.count; i++)
          // 1e-6 for the seconds, which are read from times of day in milliseconds since 1970
          closeTo(
            read.readings[name][i]!,
            run.readings[name][i]!,
            name === "timeS" ? 1e-6 : 1e-9,
            `${run.id} ${name} ${i}`,
          );
      expect(read.readings.leg).toEqual(run.readings.leg);
      expect(read.readings.face).toEqual(run.readings.face);
      expect(read.readings.line).toEqual(run.readings.line);
      for (const which of ["opening", "closing"] as const) {
        expect(read[which]?.givenNorth).toBe(run[which]?.givenNorth);
        // the two may ask for the declination at another time of the day
        closeTo(read[which]?.headingRad ?? 0, run[which]?.headingRad ?? 0, 1e-5, `${run.id} ${which}`);
      }
      closeTo(read.azimuthToGridRad, run.azimuthToGridRad, 1e-5, `${run.id} azimuth`);
      expect([
        read.id,
        read.elementId,
        read.tubeId,
        read.instrumentId,
        read.measures,
        read.calibrationIds,
      ]).toEqual([run.id, run.elementId, run.tubeId, run.instrumentId, run.measures, run.calibrationIds]);
      expect(read.spiral.length).toBe(run.spiral.length);
    }
  });

  test("what is wrong on purpose in the example site shows, and nothing else", async () => {
    const { job } = await readBack(made("example-site"), 2026);
    const results = reduceJob(job);
    const told = results.runs.flatMap((run) => run.findings.map(({ code }) => `${run.runId} ${code}`));
    expect(told).toEqual(["P02B-1 survey.gap", "P03C-1 survey.misclosure", "M05-1 survey.top-unread"]);
    const outside = results.elements.filter(({ verdicts }) =>
      verdicts.some((each) => each.verdict === "outside"),
    );
    expect(outside.map((element) => element.elementId).sort()).toEqual(["F09", "M03", "M06", "S17", "W02"]);
  });
});

/** Equal within a margin, or both missing. */
function closeTo(read: number, written: number, margin: number, what: string): void {
  const same = Number.isNaN(written) ? Number.isNaN(read) : Math.abs(read - written) <= margin;
  expect(same, `${what}: read ${read}, written ${written}`).toBe(true);
}
