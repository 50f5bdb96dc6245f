import { afterAll, beforeAll } from "vitest";
import { migrationsSuite } from "../../../test/acceptance/migrations-suite.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../../../test/support/postgres.ts";
import { postgresTables } from "../postgres/open-postgres-store.ts";
import { postgresEngine } from "./engine.ts";
import type { Tables } from "./tables.ts";

let server: PostgresServer;
let count = 0;

beforeAll(async () => {
  server = await startPostgres();
}, POSTGRES_HOOK_MS);
afterAll(() => server.stop(), POSTGRES_HOOK_MS);

migrationsSuite("migrations on PostgreSQL", postgresEngine, async () =>
  postgresTables<Tables>(await server.createDatabase(`migrations_${++count}`)),
);
