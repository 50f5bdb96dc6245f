import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { JOB, Pen, unwrap } from "../../../test/support/records.ts";
import type { AppInstance } from "../app-instance.ts";
import { createApp } from "../create-app.ts";
import { openOffice } from "../office/open-office.ts";
import type { Office } from "../office.ts";
import { readSettings } from "../read-settings.ts";

const dataFolder = mkdtempSync(join(tmpdir(), "toeline-work-routes-"));
let office: Office;
let app: AppInstance;

beforeAll(async () => {
  const settings = unwrap(readSettings({ data: dataFolder, logLevel: "silent", workers: "1" }, {}));
  office = unwrap(await openOffice(settings));
  app = await createApp(office);
  const pen = await Pen.start(1);
  await pen.set("P1", "diameter_m", 1);
  unwrap(await office.store.append(JOB, pen.entries, "2026-03-02T09:00:00.000Z"));
});
afterAll(async () => {
  await app.close();
  await office.close();
  rmSync(dataFolder, { recursive: true, force: true });
});

const headers = { host: "127.0.0.1:7410", "content-type": "application/json" };
const ask = (job: string, payload: object) =>
  app.inject({ method: "POST", url: `/api/1/jobs/${job}/heavy-work`, headers, payload });
const get = (path: string) => app.inject({ method: "GET", url: `/api/1/jobs/${path}`, headers });

test("work is asked for, looked after and fetched", async () => {
  const asked = await ask(JOB, { task: "check-log" });
  expect(asked.statusCode, asked.body).toBe(202);
  const { id } = asked.json<{ id: string }>();
  expect((await ask(JOB, { task: "check-log", input: {} })).json()).toMatchObject({ id });
  let work = (await get(`${JOB}/heavy-work/${id}`)).json<Record<string, unknown>>();
  while (work["state"] === "waiting" || work["state"] === "running") {
    await wait(50);
    work = (await get(`${JOB}/heavy-work/${id}`)).json();
  }
  expect(work).toMatchObject({ state: "finished", job: JOB, attempts: 1, result: { entries: 2, sound: 2 } });
  expect((await get(`${JOB}/heavy-work`)).json()).toEqual([work]);
  // this task makes no file
  const none = await get(`${JOB}/heavy-work/${id}/result`);
  expect(none.json()).toMatchObject({ status: 409, code: "work.no-file" });
  const cancelled = await app.inject({
    method: "POST",
    url: `/api/1/jobs/${JOB}/heavy-work/${id}/cancel`,
    headers,
    payload: {},
  });
  expect(cancelled.json(), cancelled.body).toMatchObject({ state: "finished" });
});

test("the file that was made can be fetched, as a file", async () => {
  const { id } = (await ask(JOB, { task: "results" })).json<{ id: string }>();
  let work = (await get(`${JOB}/heavy-work/${id}`)).json<Record<string, unknown>>();
  while (work["state"] === "waiting" || work["state"] === "running") {
    await wait(50);
    work = (await get(`${JOB}/heavy-work/${id}`)).json();
  }
  expect(work).toMatchObject({ state: "finished" });
  const file = await get(`${JOB}/heavy-work/${id}/result`);
  expect(file.json()).toMatchObject({ format: "toeline-results/1" });
  expect(file.headers).toMatchObject({
    "content-disposition": 'attachment; filename="results.json"',
    "x-content-type-options": "nosniff",
  });
});

test("wrong requests are told", async () => {
  expect((await ask(JOB, { task: "brew-coffee" })).statusCode).toBe(400);
  const trials = await ask(JOB, { task: "results", input: { trials: -1 } });
  expect(trials.json()).toMatchObject({ status: 400, code: "work.input", field: "input.trials" });
  expect((await get(`${JOB}/heavy-work/none`)).statusCode).toBe(404);
  const { id } = (await ask(JOB, { task: "check-log" })).json<{ id: string }>();
  expect((await get(`other/heavy-work/${id}`)).statusCode).toBe(404);
});
