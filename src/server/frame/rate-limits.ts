import rateLimit from "@fastify/rate-limit";
import type { FastifyRequest } from "fastify";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { COSTLY_REQUESTS_A_MINUTE, REQUESTS_A_MINUTE_ADDRESS, REQUESTS_A_MINUTE_PERSON } from "../limits.ts";
import type { Office } from "../office.ts";
import { RequestRefused } from "./answer-errors.ts";

const MINUTE_MS = 60_000;
/** How many people and addresses are counted at once; the ones longest unseen are forgotten first. */
const COUNTED_AT_ONCE = 10_000;

/**
 * How often somebody may ask: a person by account, everybody else by address. Each process counts for itself. A server on one's own
 * machine has one user, who cannot be kept out, and sets no limit.
 */
export async function limitRates(app: AppInstance, office: Office): Promise<void> {
  if (office.settings.mode === "local") return;
  await app.register(rateLimit, {
    global: true,
    timeWindow: MINUTE_MS,
    cache: COUNTED_AT_ONCE,
    keyGenerator: (request) => who(request, office),
    max: (request) =>
      office.access.personOf(request) === undefined ? REQUESTS_A_MINUTE_ADDRESS : REQUESTS_A_MINUTE_PERSON,
    errorResponseBuilder: (_request, { ttl }) =>
      new RequestRefused({
        status: 429,
        issue: error("server.too-many-requests", { seconds: Math.ceil(ttl / 1000) }),
      }),
  });
}

/** For a route that costs much: `config: { rateLimit: costly }`. */
export const costly = { max: COSTLY_REQUESTS_A_MINUTE, timeWindow: MINUTE_MS } as const;

function who(request: FastifyRequest, office: Office): string {
  const person = office.access.personOf(request);
  return person === undefined ? `address ${request.ip}` : `person ${person.id}`;
}
