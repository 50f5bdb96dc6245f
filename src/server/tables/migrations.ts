import type { Migrations } from "#store";
import { createAccountTables } from "./create-account-tables.ts";
import { createFrameTables } from "./create-frame-tables.ts";
import { createWorkTables } from "./create-work-tables.ts";
import type { OfficeTables } from "./office-tables.ts";

/** A step that was released is never changed; a new one follows it. Each is run on both engines by office-tables-suite.ts. */
export const officeMigrations: Migrations<OfficeTables> = {
  table: "office_migrations",
  steps: [
    { number: 1, name: "accounts", up: createAccountTables },
    { number: 2, name: "work", up: createWorkTables },
    { number: 3, name: "heads", up: createFrameTables },
  ],
};
