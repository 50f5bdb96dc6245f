import { afterAll, beforeAll } from "vitest";
import { officeTablesSuite } from "../../../test/acceptance/office-tables-suite.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../../../test/support/postgres.ts";

let server: PostgresServer;
let count = 0;

beforeAll(async () => {
  server = await startPostgres();
}, POSTGRES_HOOK_MS);
afterAll(() => server.stop(), POSTGRES_HOOK_MS);

officeTablesSuite("a server's tables in PostgreSQL", async () => ({
  address: await server.createDatabase(`office_${++count}`),
}));
