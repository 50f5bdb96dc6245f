import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, describe, expect, test } from "vitest";
import { storeSuite } from "../../../test/acceptance/store-suite.ts";
import { JOB, Pen, unwrap } from "../../../test/support/records.ts";
import { sqliteEngine } from "../sql/engine.ts";
import { openSqlStore } from "../sql/sql-store.ts";
import { openSqlite, openSqliteStore, sqliteTables } from "./open-sqlite-store.ts";

const AT = "2026-03-02T09:00:00.000Z";
const folder = mkdtempSync(join(tmpdir(), "toeline-sqlite-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let count = 0;
const newFile = () => join(folder, `${++count}.db`);
/** A store on a connection that may use only so many pages more than the file has. */
async function openWithPages(file: string, more: number) {
  const database = openSqlite(file);
  const pages = database.pragma("page_count", { simple: true }) as number;
  database.pragma(`max_page_count = ${pages + more}`);
  const limited = unwrap(await openSqlStore(sqliteTables(database), sqliteEngine));
  return { limited, lift: () => database.pragma("max_page_count = 1000000") };
}
const currentFile = () => join(folder, `${count}.db`);

storeSuite("the store in a SQLite file", {
  create: async () => unwrap(await openSqliteStore(newFile())),
  reopen: async () => unwrap(await openSqliteStore(currentFile())),
});

describe("a SQLite file", () => {
  test("has every setting on every open, not only on the first", () => {
    const file = newFile();
    for (const _ of ["first", "second", "third"]) {
      const database = openSqlite(file);
      const settings = ["journal_mode", "synchronous", "foreign_keys", "busy_timeout"].map((name) =>
        database.pragma(name, { simple: true }),
      );
      // synchronous: 2 is FULL (sqlite.org, PRAGMA synchronous)
      expect(settings).toEqual(["wal", 2, 1, 5000]);
      database.close();
    }
  });

  test("is checked by its tables: a text is no number", async () => {
    const file = newFile();
    await unwrap(await openSqliteStore(file)).close();
    const database = openSqlite(file);
    expect(() => database.prepare("insert into jobs (id, size) values ('a', 'many')").run()).toThrow(
      /cannot store TEXT value in INTEGER column/,
    );
    database.close();
  });

  test("that is no database is told as damaged, and left as it is", async () => {
    const file = newFile();
    writeFileSync(file, "this was a store once ".repeat(500));
    const opened = await openSqliteStore(file);
    expect(opened.ok ? "opened" : opened.error.code).toBe("store.damaged");
    expect(readFileSync(file, "utf8")).toBe("this was a store once ".repeat(500));
  });

  test("where none can be is told as not reachable", async () => {
    const opened = await openSqliteStore(join(folder, "no-such-folder", "a.db"));
    expect(opened.ok ? "opened" : opened.error.code).toBe("store.unreachable");
  });

  test("without room is told as full, nothing acknowledged is lost, and it goes on when there is room", async () => {
    const file = newFile();
    const pen = await Pen.start(1);
    for (let i = 0; i < 40; i++) await pen.write("note", { about: "job", text: "x".repeat(4000) });
    const store = unwrap(await openSqliteStore(file));
    unwrap(await store.append(JOB, pen.entries.slice(0, 2), AT));
    await store.close();
    const { limited, lift } = await openWithPages(file, 4);
    const held = await limited.append(JOB, pen.entries, AT);
    expect(held.ok ? "written" : held.error.code).toBe("store.full");
    expect(unwrap(await limited.readJob(JOB))).toEqual(pen.entries.slice(0, 2));
    lift();
    expect(unwrap(await limited.append(JOB, pen.entries, AT)).added).toBe(pen.entries.length - 2);
    await limited.close();
  });

  test("that is closed says so", async () => {
    const store = unwrap(await openSqliteStore(newFile()));
    await store.close();
    const read = await store.readJob(JOB);
    expect(read.ok ? "read" : read.error.code).toBe("store.closed");
  });

  test("with an entry whose text was damaged tells so instead of leaving it out", async () => {
    const file = newFile();
    const pen = await Pen.start(1);
    const store = unwrap(await openSqliteStore(file));
    unwrap(await store.append(JOB, pen.entries, AT));
    const database = new Database(file);
    database.prepare("update entries set text = substr(text, 1, 200)").run();
    database.close();
    const read = await store.readJob(JOB);
    expect(read.ok ? "read" : read.error.code).toBe("store.entry-damaged");
    await store.close();
  });
});
