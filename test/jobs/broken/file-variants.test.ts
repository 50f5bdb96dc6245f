import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import writeXlsxFile from "write-excel-file/universal";
import type { Job } from "#core";
import { type FolderReader, folderFromFiles, folderFromZip, type ReadJob, readJobFolder } from "#formats";
import { edit, type JobFiles, soundJob, textOf } from "./sound-job.ts";

const TABLES = [
  "elements.csv",
  "tubes.csv",
  "readings/R1.csv",
  "readings/R2.csv",
  "readings/R3.csv",
  "readings/R4.csv",
];

async function read(folder: FolderReader): Promise<ReadJob & { job: Job }> {
  const result = await readJobFolder(folder);
  if (result.job === undefined) throw new Error(JSON.stringify(result.findings));
  return { ...result, job: result.job };
}

/** The sound job with every table written in another way. */
function rewritten(write: (text: string) => string | Uint8Array): JobFiles {
  const files = soundJob();
  for (const name of TABLES) files.set(name, write(textOf(files, name)));
  return files;
}

const splitBy = (separator: string) => (text: string) => text.replaceAll(",", separator);
const commas = (separator: string) => (text: string) =>
  splitBy(separator)(text)
    .split("\n")
    .map((line, i) => (i === 0 ? line : line.replaceAll(/(\d)\.(\d+)(?!\d*Z)/g, "$1,$2")))
    .join("\n");
const bytes = (text: string) => new TextEncoder().encode(text);
const utf16 = (littleEndian: boolean) => (text: string) =>
  Uint8Array.from(
    [...`\uFEFF${text}`].flatMap((letter) => {
      const code = letter.charCodeAt(0);
      return littleEndian ? [code & 255, code >> 8] : [code >> 8, code & 255];
    }),
  );
const quoted = (text: string) => text.replaceAll(/[^,\n]+/g, (value) => `"${value}"`);

/** Columns in the other order, and one more that nobody knows. */
const turnedRound = (text: string) =>
  text
    .trimEnd()
    .split("\n")
    .map((line, i) =>
      [...line.split(",").reverse(), i === 0 ? "remark" : `line ${i}, odd`].map((c) => `"${c}"`).join(","),
    )
    .join("\n");

describe("the same job, written in another way, is the same job", () => {
  test.each<[string, (text: string) => string | Uint8Array]>([
    ["semicolons", splitBy(";")],
    ["tabs", splitBy("\t")],
    ["semicolons and decimal commas", commas(";")],
    ["tabs and decimal commas", commas("\t")],
    ["carriage return and line feed", (text) => text.replaceAll("\n", "\r\n")],
    ["carriage return only", (text) => text.replaceAll("\n", "\r")],
    ["byte order mark", (text) => bytes(`\uFEFF${text}`)],
    ["UTF-16, little endian", utf16(true)],
    ["UTF-16, big endian", utf16(false)],
    ["every cell quoted", quoted],
    ["columns in another order and one more", turnedRound],
    [
      "headings in capitals and with spaces",
      (text) => text.replace(/^.*\n/, (h) => ` ${h.toUpperCase().replaceAll(",", " , ")}`),
    ],
    ["no line end at the end", (text) => text.trimEnd()],
    ["printed minus signs", (text) => text.replaceAll(/(^|,)-/gm, "$1\u2212")],
  ])("%s", async (name, write) => {
    const sound = await read(folderFromFiles(soundJob()));
    const other = await read(folderFromFiles(rewritten(write)));
    expect(other.job).toEqual(sound.job);
    const told = other.findings.filter((issue) => issue.severity !== "note").map((issue) => issue.code);
    expect(told.filter((code) => code !== "formats.utf16-read")).toEqual([]);
    expect(told.length).toBe(name.startsWith("UTF-16") ? TABLES.length : 0);
  });

  test("a schedule as a spreadsheet", async () => {
    const files = soundJob();
    const [head, ...rows] = textOf(files, "elements.csv")
      .trimEnd()
      .split("\n")
      .map((line) => line.split(","));
    const cellOf = (value: string) =>
      value === "" ? null : /^-?[\d.]+$/.test(value) ? { value: Number(value) } : { value };
    const blob = await writeXlsxFile([
      head!.map((value) => ({ value })),
      ...rows.map((row) => row.map(cellOf)),
    ]).toBlob();
    files.delete("elements.csv");
    files.set("elements.xlsx", new Uint8Array(await blob.arrayBuffer()));
    const sound = await read(folderFromFiles(soundJob()));
    const other = await read(folderFromFiles(files));
    expect(other.findings).toEqual([]);
    const moved = (job: Job) =>
      job.elements.map((element) => ({ ...element, place: { ...element.place, file: "" } }));
    expect(moved(other.job)).toEqual(moved(sound.job));
    expect(other.job.elements[0]?.place).toEqual({ file: "elements.xlsx", line: 2 });
  });

  test.each([
    ["at the top", ""],
    ["in a folder", "My job/"],
    ["two folders deep", "a/b/"],
  ])("zipped, %s of the archive", async (_where, prefix) => {
    const entries = [...soundJob()].map(([name, file]) => [prefix + name, bytes(file as string)] as const);
    const folder = folderFromZip(zipSync(Object.fromEntries(entries)), "job.zip");
    if (!folder.ok) throw new Error(JSON.stringify(folder.error));
    expect((await read(folder.value)).job).toEqual((await read(folderFromFiles(soundJob()))).job);
  });
});

test.each([
  ["no archive", bytes("hello"), "formats.not-zip"],
  ["an archive cut off", zipSync({ "job.json": bytes("{}") }).slice(0, 60), "formats.not-zip"],
  [
    "a name that leads out",
    zipSync({ "job.json": bytes("{}"), "../evil.txt": bytes("x") }),
    "formats.zip-path",
  ],
  ["a name from the root", zipSync({ "/etc/job.json": bytes("{}") }), "formats.zip-path"],
  ["a name with backslashes", zipSync({ "a\\..\\..\\job.json": bytes("{}") }), "formats.zip-path"],
  ["no job inside", zipSync({ "readme.txt": bytes("x") }), "formats.zip-without-job"],
])("refuses a zip with %s", (_name, archive, code) => {
  const folder = folderFromZip(archive, "job.zip");
  expect(folder.ok).toBe(false);
  if (!folder.ok)
    expect(folder.error.map((issue) => [issue.code, issue.place.file])).toEqual([[code, "job.zip"]]);
});

test("refuses a zip that says it unpacks to more than a gigabyte, without unpacking it", () => {
  const archive = zipSync({ "job.json": new Uint8Array(1000) });
  // The size stands in the central directory, 24 bytes after its mark PK 1 2.
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  for (let i = 0; i < archive.length - 4; i++)
    if (view.getUint32(i, true) === 0x02014b50) view.setUint32(i + 24, 0xf0000000, true);
  const folder = folderFromZip(archive, "job.zip");
  expect(folder.ok).toBe(false);
  if (!folder.ok) expect(folder.error[0]?.code).toBe("formats.file-too-large");
});

test("lines are counted right after a line break inside a quoted cell", async () => {
  const files = soundJob();
  edit(files, "readings/R3.csv", "azimuth_deg", 'azimuth_deg,"remark\non two lines"');
  const lines = textOf(files, "readings/R3.csv").trimEnd().split("\n");
  const longer = lines.map((line, i) =>
    i < 2 ? line : i === 4 ? `${line},"a ""quoted""\r\nword\nand more"` : `${line},`,
  );
  longer[8] = longer[8]!.replace("15.100", "steep");
  files.set("readings/R3.csv", longer.join("\n"));
  const { findings } = await readJobFolder(folderFromFiles(files));
  const bad = findings.find(
    (issue) => issue.code === "formats.cell-number" || issue.code === "formats.cell-angle",
  );
  // Two more lines in the fifth one of the array, before the ninth.
  expect(bad?.place).toEqual({ file: "readings/R3.csv", line: 11, field: "inclination_deg" });
});

test("all findings of a file come in one pass, at most 100, and a last one says how many more there are", async () => {
  const files = soundJob();
  const rows = Array.from({ length: 250 }, (_, i) => `${i},x,y`);
  files.set("readings/R3.csv", `depth_m,inclination_deg,azimuth_deg\n${rows.join("\n")}\n`);
  const { findings } = await readJobFolder(folderFromFiles(files));
  const own = findings.filter((issue) => issue.place.file === "readings/R3.csv");
  expect(own).toHaveLength(101);
  expect(own.at(-1)?.code).toBe("formats.too-many");
  expect(own.at(-1)?.severity).toBe("error");
  expect(own.at(-1)?.values["hidden"]).toBeGreaterThanOrEqual(400);
});

test("a million bad cells are told and do not fill the memory", async () => {
  const files = soundJob();
  files.set("readings/R3.csv", `depth_m,inclination_deg,azimuth_deg\n${"x,y,z\n".repeat(400_000)}`);
  const { findings, unusableRuns } = await readJobFolder(folderFromFiles(files));
  expect(findings.length).toBeLessThan(110);
  expect(unusableRuns.map((run) => run.runId)).toEqual(["R3"]);
});
