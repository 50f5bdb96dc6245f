import { once } from "node:events";
import { writeSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import fastify from "fastify";
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { openSqliteStore } from "#store";
import { openAccess } from "../../src/server/access/open-access.ts";
import { openSockets } from "../../src/server/frame/open-sockets.ts";
import { syncRoutes } from "../../src/server/sync/sync-routes.ts";
import { openOfficeTables } from "../../src/server/tables/open-office-tables.ts";
import { folderSettings } from "./folder-settings.ts";
import { unwrap } from "./records.ts";

// The part of a server that takes and gives entries, over its own store, in a process of its own, for one person without login: up in
// a fraction of the time of a whole server. It waits for a word, says its address and runs until somebody kills it. Argument: data
// folder.

const STANDARD_OUTPUT = 1;

const [folder = ""] = process.argv.slice(2);
await once(process.stdin, "data");
const settings = folderSettings(folder, { mode: "local" });
const store = unwrap(await openSqliteStore(join(folder, "toeline.sqlite")));
const tables = unwrap(await openOfficeTables(settings));
const clock = () => new Date();
const access = openAccess(tables, settings, clock);
const app = fastify().withTypeProvider<ZodTypeProvider>();
app.setValidatorCompiler(validatorCompiler);
app.setSerializerCompiler(serializerCompiler);
app.addHook("onRequest", access.identify);
await openSockets(app);
await syncRoutes(app, {
  store,
  access,
  clock,
  id: "office",
  era: 1,
  announce: () => {},
  onGrowth: () => () => {},
});
await app.listen({ host: settings.host, port: settings.port });
writeSync(STANDARD_OUTPUT, `http://127.0.0.1:${(app.server.address() as AddressInfo).port}\n`);
