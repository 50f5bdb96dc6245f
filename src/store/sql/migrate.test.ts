import { migrationsSuite } from "../../../test/acceptance/migrations-suite.ts";
import { openSqlite, sqliteTables } from "../sqlite/open-sqlite-store.ts";
import { sqliteEngine } from "./engine.ts";
import type { Tables } from "./tables.ts";

migrationsSuite("migrations on SQLite", sqliteEngine, async () =>
  sqliteTables<Tables>(openSqlite(":memory:")),
);
