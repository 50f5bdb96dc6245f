import { expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { soundJob } from "./sound-job.ts";

test("the sound job gives no finding, and every run of it is worked out", async () => {
  const read = await readJobFolder(folderFromFiles(soundJob()));
  expect(read.findings).toEqual([]);
  expect(read.unusableRuns).toEqual([]);
  expect(read.job?.runs.map((run) => run.id)).toEqual(["R1", "R2", "R3", "R4"]);
  const results = reduceJob(read.job!);
  expect(results.runs.map((run) => [run.runId, run.path?.count])).toEqual([
    ["R1", 13],
    ["R2", 13],
    ["R3", 13],
    ["R4", 13],
  ]);
});
