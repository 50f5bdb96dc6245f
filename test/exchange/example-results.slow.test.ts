import { expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromFiles, type ReadJob, readJobFolder, writeResultsJson } from "#formats";
import { namedScenario, namedScenarios, writeJobFolder } from "#simulator";
import { sentenceOf } from "#text";
import { exportFolder, importFolder } from "../support/exchange.ts";
import { valueFrom } from "../support/results.ts";

/** The large one in a size that takes seconds. */
const SIZES: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  large: { elements: 40, stations: 60 },
};

const resultsOf = (read: ReadJob): string =>
  writeResultsJson(read.job!, read, reduceJob(read.job!), { version: "0", sentence: sentenceOf });

/** The site of the example job goes the same way and further in test/sync/example-job.slow.test.ts. */
const IDS = namedScenarios.map(({ id }) => id).filter((id) => id !== "example-site");

// some ten seconds on two idle cores
test.each(IDS)("scenario %s comes out of the log with the same results.json, byte for byte", async (id) => {
  const scenario = valueFrom(namedScenario(id, SIZES[id] ?? {}, "5"));
  const folder = folderFromFiles(writeJobFolder(scenario, "5").files);
  const given = await exportFolder(await importFolder(folder));
  expect(given.findings).toEqual([]);
  const [before, after] = [await readJobFolder(folder), await readJobFolder(given.folder)];
  expect(resultsOf(after)).toBe(resultsOf(before));
});
