import { afterAll, beforeAll } from "vitest";
import { openPostgresStore } from "#store";
import { backUpSuite } from "../../../test/acceptance/back-up-suite.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../../../test/support/postgres.ts";
import { unwrap } from "../../../test/support/records.ts";

let server: PostgresServer;
let count = 0;

beforeAll(async () => {
  server = await startPostgres();
}, POSTGRES_HOOK_MS);
afterAll(() => server.stop(), POSTGRES_HOOK_MS);

backUpSuite("back-ups of a PostgreSQL database", {
  empty: async () => ({ database: await server.createDatabase(`place_${++count}`) }),
  openStore: async (place) => unwrap(await openPostgresStore("database" in place ? place.database : "")),
});
