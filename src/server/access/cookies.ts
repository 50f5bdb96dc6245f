import cookie from "@fastify/cookie";
import type { FastifyReply, FastifyRequest } from "fastify";
import type { ServerSettings } from "../settings.ts";
import { DAY_MS, SECOND_MS } from "./book.ts";
import { ABSOLUTE_MS } from "./session-limits.ts";

const { parse, serialize } = cookie.fastifyCookie;

/** What a browser keeps for the server; never readable for the pages. */
const COOKIES = {
  session: { name: "toeline-session", maxAgeMs: ABSOLUTE_MS },
  browser: { name: "toeline-browser", maxAgeMs: 365 * DAY_MS },
} as const;
type CookieKind = keyof typeof COOKIES;

const isSecure = ({ publicAddress }: ServerSettings): boolean => publicAddress?.startsWith("https:") ?? false;

/** With https the name itself makes browsers refuse it from other hosts and without encryption (RFC 6265bis, section 4.1.3.2). */
export const cookieName = (kind: CookieKind, settings: ServerSettings): string =>
  isSecure(settings) ? `__Host-${COOKIES[kind].name}` : COOKIES[kind].name;

export const readCookie = (
  request: FastifyRequest,
  kind: CookieKind,
  settings: ServerSettings,
): string | undefined =>
  request.headers.cookie === undefined
    ? undefined
    : parse(request.headers.cookie)[cookieName(kind, settings)];

export const setCookie = (
  reply: FastifyReply,
  kind: CookieKind,
  value: string,
  settings: ServerSettings,
): void => write(reply, kind, value, COOKIES[kind].maxAgeMs, settings);

export const clearCookie = (reply: FastifyReply, kind: CookieKind, settings: ServerSettings): void =>
  write(reply, kind, "", 0, settings);

function write(
  reply: FastifyReply,
  kind: CookieKind,
  value: string,
  maxAgeMs: number,
  settings: ServerSettings,
): void {
  const options = { path: "/", httpOnly: true, sameSite: "strict", secure: isSecure(settings) } as const;
  reply.header(
    "set-cookie",
    serialize(cookieName(kind, settings), value, { ...options, maxAge: maxAgeMs / SECOND_MS }),
  );
}
