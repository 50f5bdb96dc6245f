import type { FastifyRequest } from "fastify";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import type { ServerSettings } from "../settings.ts";
import { type Answer, RequestRefused } from "./answer-errors.ts";

/** Names under which a server on this machine is asked; any other one was pointed here from outside (DNS rebinding). */
const LOCAL_NAMES = new Set(["127.0.0.1", "localhost", "[::1]"]);
const CHANGES_NOTHING = new Set(["GET", "HEAD", "OPTIONS"]);
/** Bodies that any page on the internet may send without being asked (Fetch standard, CORS-safelisted content types). */
const SENT_BY_ANY_PAGE = /^(?:text\/plain|application\/x-www-form-urlencoded|multipart\/form-data)\b/i;

/**
 * Refuses what another site makes a browser ask: state changes and WebSockets from a foreign origin, and in local mode every
 * request under a foreign name. Programs send neither origin nor fetch metadata and are let through to the check of who they are.
 *
 * Source: OWASP ASVS 5.0.0, 3.5.1 to 3.5.3; W3C Fetch Metadata Request Headers.
 */
export function refuseForeign(app: AppInstance, settings: ServerSettings): void {
  app.addHook("onRequest", async (request) => {
    const refusal = foreignness(request, settings);
    if (refusal !== undefined) throw new RequestRefused(refusal);
  });
}

function foreignness(request: FastifyRequest, settings: ServerSettings): Answer | undefined {
  if (settings.mode === "local" && !LOCAL_NAMES.has(hostname(request.headers.host)))
    return { status: 421, issue: error("server.foreign-host", { found: request.headers.host ?? "" }) };
  const opensSocket = request.headers.upgrade !== undefined;
  if (CHANGES_NOTHING.has(request.method) && !opensSocket) return undefined;
  const { origin } = request.headers;
  const site = request.headers["sec-fetch-site"];
  const isForeign =
    site === undefined || opensSocket
      ? origin !== undefined && !isOwnOrigin(origin, request, settings)
      : site !== "same-origin" && site !== "none";
  if (isForeign) return { status: 403, issue: error("server.foreign-origin", { found: origin ?? "" }) };
  const type = request.headers["content-type"];
  if (type !== undefined && SENT_BY_ANY_PAGE.test(type.trim()))
    return { status: 403, issue: error("server.form-body", { found: type }) };
  return undefined;
}

function isOwnOrigin(origin: string, request: FastifyRequest, { publicAddress }: ServerSettings): boolean {
  if (!URL.canParse(origin)) return false;
  if (publicAddress !== undefined) return new URL(origin).origin === new URL(publicAddress).origin;
  return new URL(origin).host === request.host.toLowerCase();
}

/** Name without the port; an address of version 6 stands in brackets. */
const hostname = (host = ""): string => host.toLowerCase().replace(/:\d*$/, "");
