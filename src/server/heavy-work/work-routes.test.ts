import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { folderFromFiles } from "#formats";
import { namedScenario, writeJobFolder } from "#simulator";
import { keepBlobs } from "#store";
import { importFolder } from "../../../test/support/exchange.ts";
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

/** Asks for a report and waits for it. @returns the piece of work as it ended. */
async function reportOf(input: object): Promise<Record<string, unknown>> {
  const asked = await ask(JOB, { task: "report", input });
  expect(asked.statusCode, asked.body).toBe(202);
  const { id } = asked.json<{ id: string }>();
  for (;;) {
    const work = (await get(`${JOB}/heavy-work/${id}`)).json<Record<string, unknown>>();
    if (work["state"] !== "waiting" && work["state"] !== "running") return work;
    await wait(50);
  }
}

test("a report names the signed head of the log, as PDF and as Word document", async () => {
  const scenario = unwrap(namedScenario("plain", { elements: 2, stations: 4 }, 1));
  const held = unwrap(await office.store.readJob(JOB));
  const { files } = writeJobFolder(scenario, 1);
  const log = await importFolder(folderFromFiles(files), { entries: held, blobs: new Map() }, 3);
  unwrap(await keepBlobs(office.store, log.blobs as ReadonlyMap<string, Uint8Array<ArrayBuffer>>));
  unwrap(await office.store.append(JOB, log.entries, "2026-03-02T10:00:00.000Z"));
  const word = await reportOf({ format: "word", elements: ["P0001"], number: "SQ-12" });
  expect(word).toMatchObject({ state: "finished", result: { name: "report.docx" } });
  const document = await get(`${JOB}/heavy-work/${word["id"]}/result`);
  const { size, root } = (await get(`${JOB}/head`)).json<{ size: number; root: string }>();
  expect(size).toBe(log.entries.length);
  const parts = Object.values(unzipSync(new Uint8Array(document.rawPayload))).map((part) => strFromU8(part));
  expect(parts.some((part) => part.includes(root))).toBe(true);
  expect(parts.some((part) => part.includes("SQ-12"))).toBe(true);
  const pdf = await reportOf({ format: "pdf", language: "de", units: "us", elements: ["P0001"] });
  expect(pdf).toMatchObject({ state: "finished", result: { type: "application/pdf" } });
  const paper = await get(`${JOB}/heavy-work/${pdf["id"]}/result`);
  expect(paper.rawPayload.subarray(0, 5).toString()).toBe("%PDF-");
  const unknown = await reportOf({ format: "pdf", elements: ["P9999"] });
  expect(unknown).toMatchObject({ state: "failed", issue: { code: "work.input" } });
  expect((await ask(JOB, { task: "report", input: { format: "odt" } })).json()).toMatchObject({
    code: "work.input",
    field: "input.format",
  });
});
