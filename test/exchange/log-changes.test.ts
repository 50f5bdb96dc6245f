import { expect, test } from "vitest";
import { folderFromFiles, readJobFolder } from "#formats";
import { createRandom } from "#simulator";
import { edit, type JobFiles, soundJob, textOf } from "../jobs/broken/sound-job.ts";
import { exportFolder, importFolder, type LoggedJob, writeStatements } from "../support/exchange.ts";
import { shuffled } from "../support/records.ts";

const folderOf = (files: JobFiles = soundJob()) => folderFromFiles(files);
const say = (log: LoggedJob, kind: string, body: object, device?: number) =>
  writeStatements(log, [{ author: "bert", kind, body: body as never }], device);
const readingsOf = ({ entries }: LoggedJob, run: string) =>
  entries.find(({ kind, body }) => kind === "readings" && body["run"] === run)!.id;
const fileOf = (given: Awaited<ReturnType<typeof exportFolder>>, name: string) =>
  String(given.files.get(name));

test("the same folder a second time adds nothing, also from another device", async () => {
  const log = await importFolder(folderOf());
  expect((await importFolder(folderOf(), log)).statements).toEqual([]);
  expect((await importFolder(folderOf(), log, 2)).statements).toEqual([]);
});

test.each([1, 2, 3, 4, 5])("the order of arrival makes no difference: seed %i", async (seed) => {
  let log: LoggedJob = await importFolder(folderOf());
  log = await say(log, "element", { element: "P1", set: { load_kn: 900 } }, 2);
  log = await say(log, "element", { element: "P9", set: { kind: "borehole" } }, 3);
  const mixed = { ...log, entries: shuffled(log.entries, createRandom(seed).uniform) };
  expect((await exportFolder(mixed)).files).toEqual((await exportFolder(log)).files);
});

test("a reading that was set aside leaves the file and the run, and comes back at its place", async () => {
  const log = await importFolder(folderOf());
  const body = { run: "R3", readings: readingsOf(log, "R3"), rows: [4, 5], reason: "cable moved" };
  const aside = await say(log, "set-aside", body);
  const lines = textOf(soundJob(), "readings/R3.csv").split("\n");
  const depths = (text: string) =>
    text
      .trim()
      .split("\n")
      .slice(1)
      .map((line) => Number(line.split(",")[0]));
  const without = await exportFolder(aside);
  expect(depths(fileOf(without, "readings/R3.csv"))).toEqual(
    depths(lines.join("\n")).filter((_, i) => i !== 4 && i !== 5),
  );
  const { job } = await readJobFolder(without.folder);
  expect(job?.runs.find(({ id }) => id === "R3")?.readings.count).toBe(11);
  const back = await say(aside, "put-back", { ...body, rows: [4, 5], reason: "it was not" });
  expect((await exportFolder(back)).files).toEqual((await exportFolder(log)).files);
});

test("what the folder does not have any more is set aside, what it has instead is written anew", async () => {
  const log = await importFolder(folderOf());
  const files = soundJob();
  edit(files, "readings/R3.csv", "6.000,15.100", "6.000,15.200");
  const changed = await importFolder(folderOf(files), log);
  expect(changed.statements.map(({ kind }) => kind)).toEqual(["set-aside", "readings", "run-closed"]);
  const read = await readJobFolder((await exportFolder(changed)).folder);
  expect(read.job).toEqual((await readJobFolder(folderOf(files))).job);
  expect((await importFolder(folderOf(files), changed)).statements).toEqual([]);
});

test("two values of one field: one is used, and thing, field and values are named", async () => {
  const log = await importFolder(folderOf());
  // neither of the two has seen the other's entry
  const one = await say(log, "element", { element: "P1", set: { load_kn: 1000 } }, 2);
  const other = await say(log, "element", { element: "P1", set: { load_kn: 2000 } }, 3);
  const both = {
    ...log,
    entries: [...new Map([...one.entries, ...other.entries].map((e) => [e.id, e])).values()],
  };
  const given = await exportFolder(both);
  const [conflict] = given.findings;
  expect(given.findings).toHaveLength(1);
  expect(conflict).toMatchObject({ code: "exchange.conflict", severity: "warning" });
  expect(conflict?.values).toMatchObject({ thing: "element/P1", field: "load_kn" });
  expect(String(conflict?.values["found"]).split(", ").sort()).toEqual(["1000", "2000"]);
  expect(fileOf(given, "elements.csv")).toContain(`,P,${conflict?.values["used"]}\n`);
});

test("a withdrawn element is left out, and stays out when an old folder is imported", async () => {
  const log = await importFolder(folderOf());
  const withdrawn = await say(log, "element", { element: "P2", set: { withdrawn: true } });
  expect(fileOf(await exportFolder(withdrawn), "elements.csv")).not.toContain("P2,");
  const again = await importFolder(folderOf(), withdrawn);
  expect(again.statements).toEqual([]);
  expect(again.findings.map(({ code }) => code)).toContain("exchange.withdrawn");
});

test("a log with a gap says that it is not complete", async () => {
  const { entries, blobs } = await importFolder(folderOf());
  const given = await exportFolder({ entries: entries.filter(({ sequence }) => sequence !== 9), blobs });
  expect(given.findings.map(({ code }) => code)).toContain("exchange.incomplete");
});

test("a name of a file that leads out of the folder is not used", async () => {
  const opened = {
    run: "X",
    element: "P1",
    instrument: "probe-b",
    measures: "inclination-azimuth",
    calibrations: [],
  };
  for (const readings of ["../../x.csv", "/etc/x.csv", "C:\\x.csv", "job.json", "readings/../../y.csv"]) {
    let log: LoggedJob = await importFolder(folderOf());
    log = await say(log, "run-opened", { ...opened, settings: { readings } });
    log = await say(log, "readings", { run: "X", columns: { depth_m: [0, 1] } });
    const given = await exportFolder(log);
    expect(given.files.has("readings/X.csv")).toBe(true);
    expect(given.findings.map(({ code }) => code)).toEqual(["exchange.file-renamed"]);
    expect([...given.files.keys()].filter((name) => /\.\.|^\/|:/.test(name))).toEqual([]);
  }
});
