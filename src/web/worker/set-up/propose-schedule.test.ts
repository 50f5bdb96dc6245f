import { expect, test } from "vitest";
import { folderFromFiles, readJobFolder } from "#formats";
import { foldJob, walkChains } from "#records";
import {
  EMPTY_LOG,
  exportFolder,
  type LoggedJob,
  writeStatements,
} from "../../../../test/support/exchange.ts";
import type { NewStatement } from "../desk.ts";
import type { ScheduleInput, ScheduleProposal, Swap } from "../desk-set-up.ts";
import { proposeSchedule } from "./propose-schedule.ts";

const START: NewStatement = { kind: "job", body: { set: { name: "Wall, invented", crs: "local" } } };

const write = (log: LoggedJob, statements: readonly NewStatement[]) =>
  writeStatements(
    log,
    statements.map((each) => ({ ...each, author: "anna" })),
  );

async function propose(log: LoggedJob, input: ScheduleInput, swap: Swap = "none"): Promise<ScheduleProposal> {
  const { files, folder, findings } = await exportFolder(log);
  const now = {
    log: { entries: log.entries, chains: walkChains(log.entries), state: foldJob(log.entries) },
    read: await readJobFolder(folder),
    findings,
    results: new Map(),
    work: { phase: "ready", done: 0, total: 0 },
  } as const;
  return proposeSchedule(now, files, input, swap);
}

const pasted = (text: string): ScheduleInput => ({
  from: "files",
  files: [{ name: "elements.csv", bytes: new TextEncoder().encode(text) }],
});

const HEAD = "element;kind;diameter_m;easting_m;northing_m;head_level_m;toe_level_m";
const LINES = [
  "H1;bored-pile;0,9;1200,00;53400,00;4,50;-16,00",
  "H2;bored-pile;0,9;1201,60;53400,00;4,50;-16,00",
  "H3;bored-pile;0,9;1203,20;53400,00;4,50;-16,00",
];
const SCHEDULE = [HEAD, ...LINES].join("\n");

async function jobWithSchedule(): Promise<LoggedJob> {
  const begun = await write(EMPTY_LOG, [START]);
  return write(begun, (await propose(begun, pasted(SCHEDULE))).statements);
}

/** elements.csv that the log gives. */
const scheduleOf = async (log: LoggedJob) => (await exportFolder(log)).files.get("elements.csv");

test("findings of a pasted table are those that the reader of the folder has, no one less", async () => {
  const text = [HEAD, LINES[0], "H1;pole;x;1;;4,5;9", "H4;bored-pile;0,9;12o3;53400;4,5;-16"].join("\n");
  const begun = await write(EMPTY_LOG, [START]);
  const proposal = await propose(begun, pasted(text));
  const settings = JSON.stringify({
    format: "toeline-job/1",
    name: "Wall, invented",
    place: { crs: "local" },
    instruments: [],
    runs: [],
  });
  const alone = await readJobFolder(
    folderFromFiles(
      new Map([
        ["job.json", settings],
        ["elements.csv", text],
      ]),
    ),
  );
  const ofTable = alone.findings.filter(({ place }) => place.file === "elements.csv");
  expect(ofTable.length).toBeGreaterThan(1);
  expect(proposal.findings).toEqual(ofTable);
  expect(proposal.statements.map(({ body }) => body["element"])).toEqual(["H1"]);
  expect(proposal.leftOut).toBe(2);
});

test("the same schedule again writes nothing; one cell that differs writes one field, and undo brings it back", async () => {
  const log = await jobWithSchedule();
  const before = await scheduleOf(log);
  const again = await propose(log, pasted(SCHEDULE));
  expect(again.statements).toEqual([]);
  expect(again.elements.map(({ change }) => change)).toEqual(["same", "same", "same"]);
  const edit: ScheduleInput = {
    from: "edit",
    elements: ["H1", "H3"],
    set: { toe_level_m: "-18.5", group: "" },
  };
  const { statements, undo, elements } = await propose(log, edit);
  expect(statements.map(({ body }) => body)).toEqual([
    { element: "H1", set: { toe_level_m: -18.5 } },
    { element: "H3", set: { toe_level_m: -18.5 } },
  ]);
  expect(elements.map(({ fields }) => fields)).toEqual([["toe_level_m"], ["toe_level_m"]]);
  const edited = await write(log, statements);
  expect(await scheduleOf(edited)).not.toBe(before);
  expect(await scheduleOf(await write(edited, undo))).toBe(before);
});

test("coordinates that are exchanged among others of the job are seen, and the exchange puts them right", async () => {
  const log = await jobWithSchedule();
  const text = [HEAD, "H4;bored-pile;0,9;53400,00;1204,80;4,50;-16,00"].join("\n");
  const seen = await propose(log, pasted(text));
  expect(seen.looksSwapped).toBe("all");
  const exchanged = await propose(log, pasted(text), seen.looksSwapped);
  expect(exchanged.elements.map(({ row }) => [row.eastM, row.northM])).toEqual([[1204.8, 53400]]);
});

test("one exchanged line among good ones is named, and only that one is exchanged", async () => {
  const begun = await write(EMPTY_LOG, [START]);
  const text = [SCHEDULE, "H4;bored-pile;0,9;53400,00;1204,80;4,50;-16,00"].join("\n");
  const seen = await propose(begun, pasted(text));
  expect(seen.looksSwapped).toEqual(["H4"]);
  expect(seen.statements.length).toBe(3);
  const exchanged = await propose(begun, pasted(text), seen.looksSwapped);
  expect(exchanged.elements.map(({ row }) => row.eastM)).toEqual([1200, 1201.6, 1203.2, 1204.8]);
  expect(exchanged.statements.length).toBe(4);
});

test("what was withdrawn and stands in the schedule again is put back", async () => {
  const log = await jobWithSchedule();
  const less = await write(log, [{ kind: "element", body: { element: "H2", set: { withdrawn: true } } }]);
  const { statements, elements } = await propose(less, pasted(SCHEDULE));
  expect(elements.map(({ change }) => change)).toEqual(["same", "put-back", "same"]);
  expect(statements.map(({ body }) => body)).toEqual([{ element: "H2", set: { withdrawn: false } }]);
  expect(await scheduleOf(await write(less, statements))).toBe(await scheduleOf(log));
});

test("a missing kind and head level can be given for all lines at once", async () => {
  const begun = await write(EMPTY_LOG, [START]);
  const text = "element\teasting_m\tnorthing_m\tdiameter_m\nH1\t1,5\t2,5\t0,9";
  const bare = await propose(begun, pasted(text));
  expect([...bare.lacking].sort()).toEqual(["head_level_m", "kind"]);
  const input = { ...pasted(text), fill: { kind: "bored-pile", head_level_m: "4,5" } } as ScheduleInput;
  const filled = await propose(begun, input);
  expect(filled.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(filled.elements.map(({ row }) => [row.kind, row.headLevelM])).toEqual([["bored-pile", 4.5]]);
});

test("a typed tube is read with the schedule that is there; one of no element is refused", async () => {
  const log = await jobWithSchedule();
  const typed = (element: string): ScheduleInput => ({
    from: "typed",
    table: "tubes",
    rows: [{ element, tube: "A", offset_east_m: "0.3", offset_north_m: "0", top_level_m: "4.9" }],
  });
  const { statements, tubes } = await propose(log, typed("H2"));
  expect(tubes).toBe(1);
  expect(statements).toEqual([
    {
      kind: "tube",
      body: { element: "H2", tube: "A", set: { offset_east_m: 0.3, offset_north_m: 0, top_level_m: 4.9 } },
    },
  ]);
  const refused = await propose(log, typed("H9"));
  expect(refused.statements).toEqual([]);
  expect(refused.findings.map(({ code }) => code)).toContain("formats.element-unknown");
});
