import fastify from "fastify";
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import type { AppInstance } from "./app-instance.ts";
import type { Office } from "./office.ts";

/** A group of routes, added to the server under the place they name themselves. */
type Routes = (app: AppInstance, office: Office) => Promise<void>;

/** Every group of routes there is. */
const ROUTES: readonly Routes[] = [];

/** Makes the server of an office, not yet listening. */
export async function createApp(office: Office): Promise<AppInstance> {
  const app = fastify({ logger: false }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  for (const routes of ROUTES) await app.register(async (scope) => routes(scope, office));
  return app;
}
