import { afterAll, beforeAll } from "vitest";
import { accessSuite } from "../../../test/acceptance/access-suite.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../../../test/support/postgres.ts";

let server: PostgresServer;

beforeAll(async () => {
  server = await startPostgres();
}, POSTGRES_HOOK_MS);
afterAll(() => server.stop(), POSTGRES_HOOK_MS);

const GUESSES = 300;
accessSuite(
  "accounts in PostgreSQL",
  async () => ({ database: await server.createDatabase("accounts") }),
  GUESSES,
);
