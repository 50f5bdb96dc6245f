import { afterAll, beforeAll, expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { namedScenario, writeJobFolder } from "#simulator";
import { importFolder } from "../support/exchange.ts";
import { JOB, unwrap } from "../support/records.ts";
import { type Served, serve } from "../support/served.ts";

const scenario = unwrap(namedScenario("plain", { elements: 2, stations: 12 }, "1"));
const folder = folderFromFiles(writeJobFolder(scenario, "1").files);

let served: Served;
beforeAll(async () => {
  served = await serve({ workers: 1 });
  const { entries } = await importFolder(folder);
  unwrap(await served.office.store.append(JOB, entries, "2026-11-02T09:00:00.000Z"));
}, 120_000);
afterAll(() => served.close(), 60_000);

const ask = (job: string) =>
  served.app.inject({ url: `/api/1/jobs/${job}/results`, headers: { host: "localhost" } });

test("results are worked out once and are those of the job folder", async () => {
  let answer = await ask(JOB);
  while (answer.statusCode === 202) {
    await new Promise((resolve) => setTimeout(resolve, 50));
    answer = await ask(JOB);
  }
  expect(answer.statusCode, answer.body.slice(0, 500)).toBe(200);
  const { job } = await readJobFolder(folder);
  const own = reduceJob(job!);
  const { elements } = answer.json() as { elements: { id: string; verdicts: { verdict: string }[] }[] };
  expect(elements.map(({ id }) => id)).toEqual(own.elements.map(({ elementId }) => elementId));
  expect(unwrap(await served.office.work.ofJob(JOB))).toHaveLength(1);
});

test("there are none of a job that is not there", async () => {
  expect((await ask("no-such-job")).statusCode).toBe(404);
});
