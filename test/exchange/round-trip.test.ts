import { readdirSync, readFileSync } from "node:fs";
import { join, resolve, sep } from "node:path";
import { describe, expect, test } from "vitest";
import { reduceJob } from "#core";
import { statementsFromJobFolder } from "#exchange";
import { type FolderReader, folderFromFiles, type ReadJob, readJobFolder, writeResultsJson } from "#formats";
import { namedScenario, writeJobFolder } from "#simulator";
import { sentenceOf } from "#text";
import { brokenReadings } from "../jobs/broken/broken-readings.ts";
import { brokenSettings } from "../jobs/broken/broken-settings.ts";
import { soundJob } from "../jobs/broken/sound-job.ts";
import { exportFolder, importFolder } from "../support/exchange.ts";
import { valueFrom } from "../support/results.ts";

const OPTIONS = { version: "0", sentence: sentenceOf };

function resultsOf(read: ReadJob): string {
  if (read.job === undefined) throw new Error(JSON.stringify(read.findings));
  return writeResultsJson(read.job, read, reduceJob(read.job), OPTIONS);
}

async function roundTrip(folder: FolderReader) {
  const log = await importFolder(folder);
  const given = await exportFolder(log);
  return { log, given, before: await readJobFolder(folder), after: await readJobFolder(given.folder) };
}

function exampleFolder(): FolderReader {
  const root = resolve(import.meta.dirname, "../../examples/shaft-and-pier");
  const names = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.(csv|json)$/.test(name),
  );
  return folderFromFiles(
    new Map(names.map((name) => [name.split(sep).join("/"), new Uint8Array(readFileSync(join(root, name)))])),
  );
}

/** Results depend on nothing but the job as it is read and what was found in it. */
function expectSame(after: ReadJob, before: ReadJob): void {
  expect(after.job).toEqual(before.job);
  expect(after.findings).toEqual(before.findings);
  expect(after.unusableRuns).toEqual(before.unusableRuns);
}

test("the example job comes out of the log as it went in", async () => {
  const { given, before, after } = await roundTrip(exampleFolder());
  expect(given.findings).toEqual([]);
  expectSame(after, before);
});

test.each(["1", "2", "3"])(
  "a simulated job has the same results.json, byte for byte: seed %s",
  async (seed) => {
    const scenario = valueFrom(namedScenario("plain", { elements: 2, stations: 12 }, seed));
    const { before, after } = await roundTrip(folderFromFiles(writeJobFolder(scenario, seed).files));
    expectSame(after, before);
    expect(resultsOf(after)).toBe(resultsOf(before));
  },
);

/** Mended by being taken over: what the log holds is UTF-8 in one table, with a list of runs. */
const MENDED = ["formats.utf16-read", "formats.two-schedules", "formats.json-missing"];

/** Which element, run or setting a finding is about; where it stands in job.json depends on how the file is laid out. */
const tellOf = ({ findings, unusableRuns }: ReadJob) => ({
  findings: findings
    .filter(({ code }) => !MENDED.includes(code))
    .map(({ code, severity, place }) => `${code} ${severity} ${place.file}`)
    .sort(),
  lost: unusableRuns.map(({ runId }) => runId).sort(),
});

/** The job but for the places at which its parts stand in the files. */
const withoutPlaces = (job: unknown): unknown =>
  JSON.parse(
    JSON.stringify({ job }, (key, value: unknown) =>
      ["field", "line", "place"].includes(key) ? undefined : value,
    ),
  );

describe("a job that was broken on purpose", () => {
  const cases = [...brokenReadings, ...brokenSettings].map((each) => [each.name, each] as const);

  test.each(cases)(
    "comes out with the same that is wrong in it, or is refused: %s",
    async (_name, { broken }) => {
      const files = soundJob();
      broken(files);
      const folder = folderFromFiles(files);
      const taken = await statementsFromJobFolder(folder, { author: "anna" });
      if (!taken.ok) {
        expect(taken.error.some(({ severity }) => severity === "error")).toBe(true);
        return;
      }
      const { before, after } = await roundTrip(folder);
      expect(tellOf(after)).toEqual(tellOf(before));
      expect(withoutPlaces(after.job)).toEqual(withoutPlaces(before.job));
    },
  );
});
