import { type FastifyRequest, type FastifyServerOptions, LogController } from "fastify";
import type { AppInstance } from "../app-instance.ts";
import type { Office } from "../office.ts";
import type { ServerSettings } from "../settings.ts";

/** Where the lines of the log go. */
export interface LogOutput {
  write(line: string): void;
}

const MAX_PATH = 300;

/**
 * The log: a line of JSON for each event, so that nothing in a request can begin a line of its own. Requests are named by method
 * and path; never by query, cookies, authorization or body.
 */
export function logOptions(
  { logLevel }: ServerSettings,
  output: LogOutput,
): Pick<FastifyServerOptions, "logger" | "logController"> {
  const logger = {
    level: logLevel,
    base: null,
    timestamp: () => `,"time":"${new Date().toISOString()}"`,
    formatters: { level: (label: string) => ({ level: label }) },
    serializers: { req: described, res: ({ statusCode }: { statusCode: number }) => ({ statusCode }) },
    stream: output,
  };
  // one line for each request is enough, and ours says more
  return { logger, logController: new LogController({ disableRequestLogging: true }) };
}

/** One line for each answer: who asked what, and how long it took. */
export function logRequests(app: AppInstance, office: Office): void {
  app.addHook("onResponse", async (request, reply) => {
    const line = {
      ...described(request),
      status: reply.statusCode,
      ms: Math.round(reply.elapsedTime),
      person: office.access.personOf(request)?.id,
    };
    const refused = reply.statusCode === 401 || reply.statusCode === 403 || reply.statusCode === 429;
    if (refused) request.log.warn(line, "refused");
    else request.log.info(line, "answered");
  });
}

const described = (request: FastifyRequest) => ({
  method: request.method,
  path: pathOf(request.url).slice(0, MAX_PATH),
  address: request.ip,
});

/** Without the query, which may carry what is not for a log. */
const pathOf = (url: string): string => url.split(/[?#]/, 1)[0] ?? "";
