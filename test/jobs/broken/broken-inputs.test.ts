import { expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { sentenceCodes, sentenceOf } from "#text";
import type { BrokenCase } from "./broken-case.ts";
import { brokenReadings } from "./broken-readings.ts";
import { brokenSettings } from "./broken-settings.ts";
import { soundJob } from "./sound-job.ts";

const ALL = ["R1", "R2", "R3", "R4"];
const cases = [...brokenReadings, ...brokenSettings];

test("there are at least 60 broken inputs, each with a name of its own", () => {
  expect(cases.length).toBeGreaterThanOrEqual(60);
  expect(new Set(cases.map((each) => each.name)).size).toBe(cases.length);
});

async function readBroken({ broken }: BrokenCase) {
  const files = soundJob();
  broken(files);
  return readJobFolder(folderFromFiles(files));
}

test.each(cases.map((each) => [each.name, each] as const))("%s", async (_name, each) => {
  const read = await readBroken(each);
  const found = read.findings.find((issue) => issue.code === each.code && issue.place.file === each.file);
  expect(found, JSON.stringify(read.findings, null, 1)).toBeDefined();
  expect(found?.severity).toBe(each.severity ?? "error");
  if (each.line !== undefined) expect(found?.place.line).toBe(each.line);
  if (each.field !== undefined) expect(found?.place.field).toBe(each.field);
  if (each.field !== undefined && each.file === "job.json") expect(found?.place.line).toBeGreaterThan(0);
  for (const issue of read.findings) {
    expect(sentenceCodes).toContain(issue.code);
    expect(sentenceOf(issue)).not.toMatch(/[{}]|undefined|NaN "/);
  }
});

test.each(cases.map((each) => [each.name, each] as const))("the good runs go on: %s", async (_name, each) => {
  const read = await readBroken(each);
  if (each.lost === "job") {
    expect(read.job).toBeUndefined();
    return;
  }
  const lost = each.lost ?? [];
  const job = read.job;
  expect(job).toBeDefined();
  const results = reduceJob(job!);
  const worked = results.runs.filter((run) => run.path !== undefined).map((run) => run.runId);
  if (lost[0] === "none") expect(worked).toEqual([]);
  else if (lost[0] === "") expect(worked.toSorted()).toEqual(["R1", "R2", "R3"]);
  else if (each.name === "run twice") expect(worked.toSorted()).toEqual(["R1", "R2", "R3"]);
  else expect(worked.toSorted()).toEqual(ALL.filter((id) => !lost.includes(id)));
  for (const run of read.unusableRuns)
    expect(run.findings.some((issue) => issue.severity === "error")).toBe(true);
  expect(read.unusableRuns.length + (job?.runs.length ?? 0)).toBe(lost[0] === "none" ? 0 : 4);
});
