import { createHash, type Hash } from "node:crypto";
import { type FileHandle, open, rename, rm } from "node:fs/promises";
import { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import { parseJson, utf8 } from "#records";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import { type Head, headSchema, type Part, rowOf, rowText, type Tally, tallySchema } from "./part.ts";
import type { Snapshot } from "./snapshot.ts";

/** A line that says what follows is not longer. Bytes. */
const MAX_LINE_BYTES = 1000;
/** Nor is a part. Bytes. */
const MAX_PART_BYTES = 256 * 1024 * 1024;
const READ_BYTES = 1024 * 1024;
const NEW_LINE = 10;

const count = z.number().int().min(0);
const lineSchema = z.strictObject({
  part: count,
  table: z.string(),
  bytes: count.max(MAX_PART_BYTES),
  sha256: z.string(),
});
type Line = z.output<typeof lineSchema>;

/** Names of parts that are no tables. */
const HEAD = "head";
const TALLY = "tally";
/** Ends the file; its hash is that of everything before its line. */
const END = "end";

const lineOf = ({ part, table, bytes, sha256 }: Line): string =>
  `${JSON.stringify({ part, table, bytes, sha256 })}\n`;

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/**
 * Writes a copy of an office into one file. The file has its name only when it is whole and on the disk.
 *
 * Errors: backup.file, and those of every call of a store.
 */
export async function writeBackUpFile(
  file: string,
  snapshot: Snapshot,
  onRows: (rows: number) => void,
): Promise<Result<Tally, Issue>> {
  const unfinished = `${file}.${process.pid}.unfinished`;
  const opened = await attempt(() => open(unfinished, "w", 0o600));
  if (!opened.ok) return fail(error("backup.file", { found: opened.error }));
  const written = await attempt(async () => {
    const tally = await writeParts(opened.value, snapshot, onRows);
    await opened.value.sync();
    return tally;
  });
  await opened.value.close();
  const named = written.ok ? await attempt(() => rename(unfinished, file)) : written;
  if (named.ok && written.ok) return ok(written.value);
  await attempt(() => rm(unfinished, { force: true }));
  return fail(error("backup.file", { found: named.ok ? "" : named.error }));
}

async function writeParts(
  handle: FileHandle,
  { head, parts, tally }: Snapshot,
  onRows: (rows: number) => void,
): Promise<Tally> {
  const whole = createHash("sha256");
  let part = 0;
  let rows = 0;
  const put = async (table: string, body: string) => {
    const bytes = utf8(body);
    const line = utf8(lineOf({ part: part++, table, bytes: bytes.length, sha256: sha256(bytes) }));
    for (const piece of [line, bytes]) {
      whole.update(piece);
      await handle.write(piece);
    }
  };
  await put(HEAD, `${JSON.stringify(head)}\n`);
  for await (const { table, rows: more } of parts()) {
    await put(table, more.map((row) => `${rowText(row)}\n`).join(""));
    rows += more.length;
    onRows(rows);
  }
  const counted = await tally();
  await put(TALLY, `${JSON.stringify(counted)}\n`);
  await handle.write(utf8(lineOf({ part, table: END, bytes: 0, sha256: whole.digest("hex") })));
  return counted;
}

/** A back-up file that was read once from end to end, with every hash as it must be. */
export interface BackUpFile {
  readonly head: Head;
  readonly tally: Tally;
  readonly parts: () => AsyncGenerator<Part>;
}

/**
 * Reads a back-up file to its end and checks the hash of every part and of the whole, before anything is done with it.
 *
 * Errors: backup.file, backup.not-one, backup.damaged, backup.cut, backup.newer.
 */
export async function openBackUpFile(file: string): Promise<Result<BackUpFile, Issue>> {
  let head: Head | undefined;
  let tally: Tally | undefined;
  const checked = await attempt(async () => {
    for await (const read of readParts(file)) {
      if ("issue" in read) return read.issue;
      const shaped = shapeOf(read.line, read.body);
      if (shaped?.ok === false) return shaped.error;
      if (shaped?.ok && "format" in shaped.value) head = shaped.value;
      else if (shaped?.ok && "jobs" in shaped.value) tally = shaped.value;
    }
    return undefined;
  });
  if (!checked.ok) return fail(error("backup.file", { found: checked.error }));
  if (checked.value !== undefined) return fail(checked.value);
  if (head === undefined || tally === undefined) return fail(error("backup.cut", { part: 0 }));
  return ok({ head, tally, parts: () => rowsOf(file) });
}

/** The content of a part that is no table; undefined for rows. */
function shapeOf(line: Line, body: string): Result<Head | Tally, Issue> | undefined {
  if (line.table !== HEAD && line.table !== TALLY) return undefined;
  const schema = line.table === HEAD ? headSchema : tallySchema;
  const parsed = parseJson(body);
  const shaped = parsed.ok ? schema.safeParse(parsed.value) : undefined;
  if (shaped?.success) return ok(shaped.data);
  return fail(error("backup.not-one", { found: body.slice(0, 60) }));
}

async function* rowsOf(file: string): AsyncGenerator<Part> {
  for await (const read of readParts(file)) {
    // the file was whole when it was checked; a change since then ends the restore, which keeps nothing
    if ("issue" in read) throw new Error(`The back-up was changed while it was read (${read.issue.code}).`);
    const { line, body } = read;
    if (line.table === HEAD || line.table === TALLY) continue;
    yield { table: line.table, rows: body.split("\n").slice(0, -1).map(rowOf) };
  }
}

type ReadPart = { readonly line: Line; readonly body: string } | { readonly issue: Issue };

/** The parts of a file one after the other; the first thing that is wrong ends them. */
async function* readParts(file: string): AsyncGenerator<ReadPart> {
  const handle = await open(file, "r");
  const whole = createHash("sha256");
  const reader = readerOf(handle);
  // whoever reads may stop before the end
  try {
    for (let part = 0, isEnd = false; !isEnd; part++) {
      const read = await readPart(reader, whole, part);
      if ("issue" in read || read.line.table !== END) yield read;
      isEnd = "issue" in read || read.line.table === END;
    }
  } finally {
    await handle.close();
  }
}

async function readPart(reader: Reader, whole: Hash, part: number): Promise<ReadPart> {
  const damaged = (found: string): ReadPart => ({ issue: error("backup.damaged", { part, found }) });
  const text = await reader.line();
  if (text === undefined)
    return {
      issue: part === 0 ? error("backup.not-one", { found: "no head" }) : error("backup.cut", { part }),
    };
  const parsed = parseJson(Buffer.from(text).toString("utf8"));
  const shaped = parsed.ok ? lineSchema.safeParse(parsed.value) : undefined;
  if (shaped?.success !== true)
    return part === 0 ? { issue: error("backup.not-one", { found: "no head" }) } : damaged("its heading");
  const line = shaped.data;
  // written in one way only, so that not even a blank can be another one
  if (!Buffer.from(lineOf(line)).equals(Buffer.from(text)) || line.part !== part)
    return damaged("its heading");
  if (line.table === END) {
    if (line.sha256 !== whole.digest("hex") || line.bytes !== 0) return damaged("the hash of the whole");
    return (await reader.bytes(1)) === undefined ? { line, body: "" } : damaged("something follows the end");
  }
  const body = await reader.bytes(line.bytes);
  if (body === undefined) return { issue: error("backup.cut", { part }) };
  if (sha256(body) !== line.sha256) return damaged("its hash");
  whole.update(text).update(body);
  return { line, body: Buffer.from(body).toString("utf8") };
}

interface Reader {
  /** up to and with the next line feed; undefined if there is none within the longest line */
  line(): Promise<Uint8Array | undefined>;
  /** undefined if there are not so many */
  bytes(length: number): Promise<Uint8Array | undefined>;
}

function readerOf(handle: FileHandle): Reader {
  let held = Buffer.alloc(0);
  const more = async (): Promise<boolean> => {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(READ_BYTES), 0, READ_BYTES);
    if (bytesRead > 0) held = Buffer.concat([held, buffer.subarray(0, bytesRead)]);
    return bytesRead > 0;
  };
  const take = (length: number): Uint8Array => {
    const taken = held.subarray(0, length);
    held = held.subarray(length);
    return taken;
  };
  return {
    line: async () => {
      while (held.indexOf(NEW_LINE) < 0 && held.length < MAX_LINE_BYTES && (await more()));
      const end = held.indexOf(NEW_LINE);
      return end < 0 || end >= MAX_LINE_BYTES ? undefined : take(end + 1);
    },
    bytes: async (length) => {
      while (held.length < length && (await more()));
      return held.length < length ? undefined : take(length);
    },
  };
}
