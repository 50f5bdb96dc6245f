import type { FastifyReply, FastifyRequest } from "fastify";
import type { Issue } from "#core";
import { error } from "../../issue.ts";
import type { Access } from "../../office.ts";
import { problem } from "../../problem.ts";
import { type Account, accountById } from "../accounts.ts";
import type { Book, Caller } from "../book.ts";
import { verifyPassword } from "../secrets/password-hash.ts";
import { type SecurityEvent, writeEvent } from "../security-events.ts";
import { takeTries } from "../sign-in.ts";
import { giveBack } from "../tries.ts";

/** What the routes about accounts stand on. */
export interface RouteContext {
  readonly book: Book;
  readonly access: Access;
}

const MAX_PROGRAM = 200;

export const callerOf = (request: FastifyRequest): Caller => ({
  address: request.ip,
  program: (request.headers["user-agent"] ?? "").slice(0, MAX_PROGRAM),
});

const STATUS: Readonly<Record<string, number>> = {
  "access.busy": 503,
  "access.slow-down": 429,
  "access.wrong-login": 401,
  "access.wrong-code": 403,
  "access.wrong-password": 403,
  "access.passkey-refused": 403,
  "access.link-dead": 410,
  "access.login-taken": 409,
  "access.no-public-address": 409,
  "access.last-administrator": 409,
  "access.scope-too-wide": 403,
};

/** Answers with a finding under the status that fits it; what is wrong with a field is 422. */
export function refusal(reply: FastifyReply, issue: Issue): FastifyReply {
  const { seconds } = issue.values;
  if (seconds !== undefined) reply.header("retry-after", String(seconds));
  return problem(reply, STATUS[issue.code] ?? 422, issue);
}

export const notFound = (reply: FastifyReply): FastifyReply => problem(reply, 404, error("server.not-found"));

/** A hook: only for somebody who sits in front of a screen; a program's token changes nothing about the account. */
export const inSession =
  ({ access }: RouteContext) =>
  async (request: FastifyRequest, reply: FastifyReply): Promise<unknown> => {
    await access.signedIn(request, reply);
    const person = access.personOf(request);
    if (person === undefined || person.by === "session") return undefined;
    return problem(reply, 403, error("access.session-only"));
  };

/** The account of whoever is signed in. Only behind `inSession`. */
export async function ownAccount(
  { book, access }: RouteContext,
  request: FastifyRequest,
): Promise<Account | undefined> {
  const person = access.personOf(request);
  return person === undefined ? undefined : accountById(book, person.id);
}

/** Writes down something that the one who asks has done. */
export const note = (
  { book, access }: RouteContext,
  request: FastifyRequest,
  what: SecurityEvent["what"],
  details: SecurityEvent["details"] = {},
): Promise<void> =>
  writeEvent(book, { what, who: access.personOf(request)?.id, address: request.ip, details });

/**
 * Asks once more for the password before something that would give a borrowed screen away for good.
 *
 * @returns what is wrong; undefined if it was right. Codes: access.slow-down, access.wrong-password, access.busy.
 */
export async function wrongPassword(
  book: Book,
  account: Account,
  password: string,
): Promise<Issue | undefined> {
  const counted = { pace: "secondFactor", key: `password ${account.id}` } as const;
  const free = await takeTries(book, [counted]);
  if (!free.ok) return free.error;
  const isRight = await verifyPassword(password, account.password);
  if (!isRight.ok) return isRight.error;
  if (!isRight.value) return error("access.wrong-password", {}, "password");
  await giveBack(book, counted);
  return undefined;
}
