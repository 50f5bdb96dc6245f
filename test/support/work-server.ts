import { writeSync } from "node:fs";
import { openWorkQueue } from "../../src/server/heavy-work/open-work-queue.ts";
import { openOfficeTables } from "../../src/server/tables/open-office-tables.ts";
import { unwrap } from "./records.ts";

// A server process as far as heavy work goes: takes requests from its standard input, one JSON a line, until it is killed or the
// input ends. Arguments: address of the database, number of threads.

const STANDARD_OUTPUT = 1;

const [database = "", workers = "0"] = process.argv.slice(2);
const settings = { database, dataFolder: "" };
const tables = unwrap(await openOfficeTables(settings));
const queue = unwrap(
  await openWorkQueue({ ...settings, workers: Number(workers) }, tables, () => new Date()),
);
say("ready");
for await (const line of lines()) {
  const work = unwrap(await queue.request(JSON.parse(line)));
  say(`taken ${work.id}`);
}
await queue.close();
await tables.db.destroy();

function say(text: string): void {
  writeSync(STANDARD_OUTPUT, `${text}\n`);
}

async function* lines(): AsyncGenerator<string> {
  let rest = "";
  for await (const chunk of process.stdin) {
    const parts = (rest + String(chunk)).split("\n");
    rest = parts.pop() ?? "";
    yield* parts;
  }
}
