import type { Migrations } from "#store";
import { createAccountTables } from "./create-account-tables.ts";
import type { OfficeTables } from "./office-tables.ts";

/** A step that was released is never changed; a new one follows it. Each is run on both engines by office-tables-suite.ts. */
export const officeMigrations: Migrations<OfficeTables> = {
  table: "office_migrations",
  steps: [{ number: 1, name: "accounts", up: createAccountTables }],
};
