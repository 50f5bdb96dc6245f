import { writeSync } from "node:fs";
import { openSqliteStore } from "#store";
import { JOB, Pen, unwrap } from "./records.ts";

// A program that writes into a store until somebody kills it, and says which entries were acknowledged: one id a line.
// Arguments: file, number of the device.

const STANDARD_OUTPUT = 1;
const BATCH = 3;

const [file = "", device = ""] = process.argv.slice(2);
const store = unwrap(await openSqliteStore(file));
const pen = await Pen.start(Number(device));
for (let from = 0; ; from = pen.entries.length) {
  if (from > 0) for (let i = 0; i < BATCH; i++) await pen.set("P1", "diameter_m", 1 + i);
  const { held } = unwrap(await store.append(JOB, pen.entries.slice(from), new Date().toISOString()));
  writeSync(STANDARD_OUTPUT, `${held.join("\n")}\n`);
}
