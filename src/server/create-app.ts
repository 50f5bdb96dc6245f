import cookie from "@fastify/cookie";
import fastify from "fastify";
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { accountRoutes } from "./access/account-routes.ts";
import type { AppInstance } from "./app-instance.ts";
import { answerBadAddress, answerErrors } from "./frame/answer-errors.ts";
import { openSockets } from "./frame/open-sockets.ts";
import { limitRates } from "./frame/rate-limits.ts";
import { refuseForeign } from "./frame/refuse-foreign.ts";
import { type LogOutput, logOptions, logRequests } from "./frame/request-log.ts";
import { securityHeaders } from "./frame/security-headers.ts";
import { serveApp } from "./frame/static-app.ts";
import { healthRoutes } from "./health/health-routes.ts";
import { workRoutes } from "./heavy-work/work-routes.ts";
import { jobRoutes } from "./jobs/job-routes.ts";
import { MAX_BODY_BYTES, REQUEST_TIMEOUT_MS } from "./limits.ts";
import { metricsRoutes } from "./metrics/metrics-routes.ts";
import { countRequests } from "./metrics/request-metrics.ts";
import type { Office } from "./office.ts";
import { describeRoutes } from "./openapi/openapi-document.ts";
import { openApiRoutes } from "./openapi/openapi-routes.ts";
import { syncRoutes } from "./sync/sync-routes.ts";

/** Every group of routes that stands on an office. */
const ROUTES: readonly ((app: AppInstance, office: Office) => Promise<void>)[] = [
  accountRoutes,
  jobRoutes,
  syncRoutes,
  workRoutes,
];

/** Longest name in an address: a job's id or a file's hash, with every sign escaped. */
const MAX_PARAMETER = 300;

/**
 * Makes the server of an office, not yet listening. Routes find ready: cookies, WebSockets, bodies of JSON and of bytes (up to
 * `MAX_BODY_BYTES`; a route may set its own `bodyLimit`), and who asks (`office.access.personOf`).
 */
export async function createApp(office: Office, log: LogOutput = process.stderr): Promise<AppInstance> {
  const { settings } = office;
  const app: AppInstance = fastify({
    ...logOptions(settings, log),
    bodyLimit: MAX_BODY_BYTES,
    requestTimeout: REQUEST_TIMEOUT_MS,
    trustProxy: settings.trustedProxies.length > 0 && [...settings.trustedProxies],
    routerOptions: { maxParamLength: MAX_PARAMETER },
    forceCloseConnections: "idle",
    frameworkErrors: answerBadAddress,
  }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  answerErrors(app);
  takeBodies(app);
  // in the order in which they look at a request
  await securityHeaders(app, settings);
  app.addHook("onRequest", office.access.identify);
  logRequests(app, office);
  const requests = countRequests(app);
  refuseForeign(app, settings);
  await app.register(cookie);
  await openSockets(app);
  await describeRoutes(app);
  await limitRates(app, office);
  await healthRoutes(app, office);
  await metricsRoutes(app, office, requests);
  for (const routes of ROUTES) await app.register(async (scope: AppInstance) => routes(scope, office));
  await openApiRoutes(app);
  await serveApp(app, settings.appFolder);
  return app;
}

/** JSON is read by the frame; a text of any other kind is refused, because every page on the internet may send it. */
function takeBodies(app: AppInstance): void {
  app.removeContentTypeParser("text/plain");
  app.addContentTypeParser("application/octet-stream", { parseAs: "buffer" }, (_request, body, done) =>
    done(null, body),
  );
}
