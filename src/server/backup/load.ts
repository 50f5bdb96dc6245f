import { createHash } from "node:crypto";
import { sql } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import { createVerifier, parseJson, verifyLog } from "#records";
import { error } from "../issue.ts";
import { COPIED, type CopiedTable } from "./copied-tables.ts";
import type { Part, Row, Tally } from "./part.ts";
import { type AnyDb, digestsOf, gather, pages, tableNames } from "./snapshot.ts";

export type Dbs = Readonly<Record<CopiedTable["set"], AnyDb>>;

type Outcome = Promise<Result<true, Issue>>;

const DONE = ok(true as const);

/** Names of tables among those copied that hold something already. */
export async function filledTables(dbs: Dbs): Promise<readonly string[]> {
  const filled: string[] = [];
  for (const set of ["store", "office"] as const) {
    const there = await tableNames(dbs[set]);
    for (const { name } of COPIED.filter((table) => table.set === set && there.has(table.name))) {
      const { rows } = await sql`select 1 from ${sql.table(name)} limit 1`.execute(dbs[set]);
      if (rows.length > 0) filled.push(name);
    }
  }
  return filled;
}

/** Writes rows as they come, in the order in which they come. */
export async function loadParts(
  dbs: Dbs,
  parts: AsyncIterable<Part>,
  onRows: (rows: number) => void,
): Outcome {
  const tables = new Map(COPIED.map((table) => [table.name, table]));
  let written = 0;
  for await (const { table: name, rows } of parts) {
    const table = tables.get(name);
    if (table === undefined) return fail(error("backup.row", { table: name, found: "an unknown table" }));
    await insert(dbs[table.set], table, rows);
    written += rows.length;
    onRows(written);
  }
  return DONE;
}

async function insert(db: AnyDb, { name }: CopiedTable, rows: readonly Row[]): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  const values = rows.map((row) => sql`(${sql.join(columns.map((column) => row[column] ?? null))})`);
  const names = sql.join(columns.map((column) => sql.ref(column)));
  await sql`insert into ${sql.table(name)} (${names}) values ${sql.join(values)}`.execute(db);
}

/**
 * Reads back what was written and holds it against what it was copied from: number of rows, every entry with its signature, the
 * set of entries of each job, every complete file by its name.
 */
export async function checkLoaded(dbs: Dbs, expected: Tally, onRows: (rows: number) => void): Outcome {
  const ids = new Map<string, string[]>();
  const counted: Record<string, number> = {};
  let read = 0;
  for (const table of COPIED)
    for await (const { rows } of pages(dbs[table.set], table)) {
      counted[table.name] = (counted[table.name] ?? 0) + rows.length;
      if (table.name === "entries") {
        const checked = await checkEntries(rows);
        if (!checked.ok) return checked;
        gather(ids, rows);
      }
      read += rows.length;
      onRows(read);
    }
  for (const table of COPIED) {
    const [found, wanted] = [counted[table.name] ?? 0, expected.rows[table.name] ?? 0];
    if (found !== wanted)
      return fail(error("backup.row", { table: table.name, found: `${found} rows instead of ${wanted}` }));
  }
  const sets = checkSets(await digestsOf(ids), expected.jobs);
  return sets.ok ? checkBlobs(dbs.store) : sets;
}

function checkSets(found: Tally["jobs"], expected: Tally["jobs"]): Result<true, Issue> {
  for (const job of new Set([...Object.keys(found), ...Object.keys(expected)])) {
    const [mine, theirs] = [found[job], expected[job]];
    if (mine?.digest !== theirs?.digest || mine?.size !== theirs?.size)
      return fail(
        error("backup.set", { job, found: mine?.digest ?? "none", expected: theirs?.digest ?? "none" }),
      );
  }
  return DONE;
}

const verifier = createVerifier();

/** Each by itself: shape, content against id, signature, and that the columns say the same as the text. */
async function checkEntries(rows: readonly Row[]): Outcome {
  const byJob = new Map<string, Row[]>();
  for (const row of rows) byJob.set(String(row["job"]), [...(byJob.get(String(row["job"])) ?? []), row]);
  for (const [job, own] of byJob) {
    const raw = own.map((row) => {
      const parsed = parseJson(String(row["text"]));
      return parsed.ok ? parsed.value : undefined;
    });
    const { sound, firstBad } = await verifyLog(raw, job, verifier);
    const soundIds = new Set(sound.map((entry) => entry.id));
    const bad = own.find((row) => !soundIds.has(String(row["id"])));
    if (bad !== undefined)
      return fail(
        error("backup.entry", { entry: String(bad["id"]), job, found: firstBad[0]?.issue.code ?? "" }),
      );
  }
  return DONE;
}

async function checkBlobs(db: AnyDb): Outcome {
  const { rows } = await sql<{ hash: string }>`select hash from blobs where complete = 1`.execute(db);
  for (const { hash } of rows) {
    const whole = createHash("sha256");
    for (let from = 0; ; ) {
      const { rows: parts } = await sql<{ start: number; bytes: Uint8Array }>`
        select start, bytes from blob_parts where hash = ${hash} and start >= ${from}
        order by start limit 16`.execute(db);
      const last = parts.at(-1);
      if (last === undefined) break;
      for (const { bytes } of parts) whole.update(bytes);
      from = last.start + last.bytes.length;
    }
    if (whole.digest("hex") !== hash) return fail(error("backup.blob", { hash }));
  }
  return DONE;
}
