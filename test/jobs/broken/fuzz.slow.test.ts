import { zipSync } from "fflate";
import { expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromFiles, folderFromZip, readJobFolder } from "#formats";
import { sentenceCodes } from "#text";
import { type JobFiles, soundJob } from "./sound-job.ts";

const SEED = 20260302;

/** A small generator for the tests: mulberry32, from memory. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;
const below = (random: Random, n: number): number => Math.floor(random() * n);
const bytesOf = (file: string | Uint8Array): Uint8Array =>
  typeof file === "string" ? new TextEncoder().encode(file) : file;

/** Characters that mean something to a reader of tables or JSON. */
const SHARP = [...",;\t\n\r\"'.-+eE0919 {}[]:nN\u0000\uFEFF°−"];

const damages: readonly ((bytes: Uint8Array, random: Random) => Uint8Array)[] = [
  (bytes, random) => bytes.slice(0, below(random, bytes.length + 1)),
  (bytes, random) => bytes.slice(below(random, bytes.length + 1)),
  (bytes, random) => bytes.map((byte) => (random() < 0.003 ? below(random, 256) : byte)),
  (bytes, random) => {
    const at = below(random, bytes.length + 1);
    const piece = new TextEncoder().encode(SHARP[below(random, SHARP.length)]!.repeat(1 + below(random, 3)));
    return Uint8Array.from([...bytes.slice(0, at), ...piece, ...bytes.slice(at + below(random, 3))]);
  },
  (bytes, random) => {
    const [from, to] = [below(random, bytes.length), below(random, bytes.length)];
    return Uint8Array.from([...bytes.slice(0, from), ...bytes.slice(to)]);
  },
];

function damaged(files: JobFiles, random: Random): JobFiles {
  const names = [...files.keys()];
  const result = new Map(files);
  for (let n = 1 + below(random, 3); n > 0; n--) {
    const name = names[below(random, names.length)]!;
    const damage = damages[below(random, damages.length)]!;
    result.set(name, damage(bytesOf(result.get(name)!), random));
  }
  return result;
}

test(`1,000 damaged jobs are read without an exception, and what is left is worked out (seed ${SEED})`, async () => {
  const random = randomFrom(SEED);
  const codes = new Set<string>();
  for (let i = 0; i < 1000; i++) {
    const files = damaged(soundJob(), random);
    const read = await readJobFolder(folderFromFiles(files));
    for (const issue of read.findings) codes.add(issue.code);
    if (read.job === undefined) expect(read.findings.some((issue) => issue.severity === "error")).toBe(true);
    else
      for (const run of reduceJob(read.job).runs)
        checkPath(run.path?.northM, `seed ${SEED}, round ${i}, run ${run.runId}`);
    for (const { findings } of read.unusableRuns) expect(findings.length).toBeGreaterThan(0);
  }
  expect([...codes].filter((code) => !sentenceCodes.includes(code))).toEqual([]);
  expect(codes.size).toBeGreaterThan(20);
});

function checkPath(values: Float64Array | undefined, what: string): void {
  expect(values?.every(Number.isFinite) ?? true, what).toBe(true);
}

test(`300 damaged archives are read or refused without an exception (seed ${SEED})`, async () => {
  const random = randomFrom(SEED + 1);
  const archive = zipSync(Object.fromEntries([...soundJob()].map(([name, file]) => [name, bytesOf(file)])));
  for (let i = 0; i < 300; i++) {
    const folder = folderFromZip(damages[below(random, damages.length)]!(archive, random), "job.zip");
    if (!folder.ok) {
      expect(folder.error.length).toBeGreaterThan(0);
      continue;
    }
    const read = await readJobFolder(folder.value);
    expect(read.job !== undefined || read.findings.length > 0).toBe(true);
  }
});

test(`200 damaged workbooks are read or refused without an exception (seed ${SEED})`, async () => {
  const random = randomFrom(SEED + 2);
  const { default: writeXlsxFile } = await import("write-excel-file/universal");
  const rows = String(soundJob().get("elements.csv")).trimEnd().split("\n");
  const sheet = rows.map((row) => row.split(",").map((value) => (value === "" ? null : { value })));
  const workbook = new Uint8Array(await (await writeXlsxFile(sheet).toBlob()).arrayBuffer());
  for (let i = 0; i < 200; i++) {
    const files = soundJob();
    files.delete("elements.csv");
    files.set("elements.xlsx", damages[below(random, damages.length)]!(workbook, random));
    const read = await readJobFolder(folderFromFiles(files));
    expect(read.job !== undefined || read.findings.length > 0).toBe(true);
  }
});
