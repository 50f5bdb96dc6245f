import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { openSqliteStore, openTables, storeMigrations } from "#store";
import { backUpSuite } from "../../../test/acceptance/back-up-suite.ts";
import { unwrap } from "../../../test/support/records.ts";
import { openOfficeTables } from "../tables/open-office-tables.ts";
import { COPIED, NOT_COPIED } from "./copied-tables.ts";
import { filesIn } from "./place.ts";

const root = mkdtempSync(join(tmpdir(), "toeline-places-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));
const empty = async () => ({ dataFolder: mkdtempSync(join(root, "place-")) });

backUpSuite("back-ups of SQLite files", {
  empty,
  openStore: async (place) =>
    unwrap(await openSqliteStore(filesIn("dataFolder" in place ? place.dataFolder : "").store)),
});

test("every table is copied, or stands among those that are not, with the reason", async () => {
  const { dataFolder } = await empty();
  const store = unwrap(await openTables({ file: filesIn(dataFolder).store }, storeMigrations));
  const office = unwrap(await openOfficeTables({ dataFolder, database: undefined }));
  const there = await Promise.all(
    [store.db, office.db].map(async (db) => (await db.introspection.getTables()).map((table) => table.name)),
  );
  const named = [...COPIED.map((table) => table.name), ...Object.keys(NOT_COPIED)];
  expect(there.flat().sort()).toEqual(named.sort());
  await store.db.destroy();
  await office.db.destroy();
});
