import type { Selectable } from "kysely";
import type { SessionTable } from "../tables/account-tables.ts";
import { type Book, type Caller, nowOf } from "./book.ts";
import type { Person } from "./person.ts";
import { hashOf, newId, newSecret } from "./secrets/random.ts";
import { ABSOLUTE_MS, IDLE_MS, NOTED_EVERY_MS, PENDING_MS } from "./session-limits.ts";

const MAX_PROGRAM = 200;

/** A session that holds, and whose it is. */
export interface LiveSession {
  readonly id: string;
  /** the password was right, but the second factor was not shown yet: good for nothing else */
  readonly isPending: boolean;
  readonly person: Person;
}

/** Begins a session; the answer is the only time its secret is seen. */
export async function beginSession(
  book: Book,
  account: string,
  caller: Caller,
  state: "pending" | "second-factor" | "password-only",
): Promise<string> {
  const secret = newSecret();
  const now = nowOf(book);
  await book.db
    .insertInto("sessions")
    .values({
      hash: hashOf(secret),
      id: newId(),
      account,
      pending: state === "pending" ? 1 : 0,
      second_factor_at: state === "second-factor" ? now : null,
      created_at: now,
      seen_at: now,
      address: caller.address,
      program: caller.program.slice(0, MAX_PROGRAM),
    })
    .execute();
  return secret;
}

/** The session of a secret, if it holds: known, neither idle nor old, its account not disabled. */
export async function sessionOf(book: Book, secret: string): Promise<LiveSession | undefined> {
  const now = nowOf(book);
  const row = await book.db
    .selectFrom("sessions")
    .innerJoin("accounts", "accounts.id", "sessions.account")
    .select([
      "sessions.id",
      "sessions.hash",
      "account",
      "pending",
      "second_factor_at",
      "seen_at",
      "sessions.created_at",
      "name",
      "is_admin",
    ])
    .where("hash", "=", hashOf(secret))
    .where("disabled", "=", 0)
    .executeTakeFirst();
  if (row === undefined || !isAlive(row, now)) return undefined;
  if (now - row.seen_at >= NOTED_EVERY_MS)
    await book.db.updateTable("sessions").set({ seen_at: now }).where("hash", "=", row.hash).execute();
  const person = {
    id: row.account,
    name: row.name,
    by: "session",
    isAdmin: row.is_admin === 1,
    hasSecondFactor: row.second_factor_at !== null,
  } as const;
  return { id: row.id, isPending: row.pending === 1, person };
}

const isAlive = (
  row: Pick<Selectable<SessionTable>, "pending" | "seen_at" | "created_at">,
  now: number,
): boolean =>
  now - row.seen_at < IDLE_MS && now - row.created_at < (row.pending === 1 ? PENDING_MS : ABSOLUTE_MS);

/** The sessions of an account that still hold, newest first. */
export async function sessionsOf(book: Book, account: string): Promise<readonly Selectable<SessionTable>[]> {
  const now = nowOf(book);
  const rows = await book.db
    .selectFrom("sessions")
    .selectAll()
    .where("account", "=", account)
    .orderBy("created_at", "desc")
    .execute();
  return rows.filter((row) => isAlive(row, now));
}

/** A second factor was shown. The session begins anew with another secret, as after every gain of rights. */
export async function renewWithSecondFactor(
  book: Book,
  session: LiveSession,
  caller: Caller,
): Promise<string> {
  const secret = await beginSession(book, session.person.id, caller, "second-factor");
  await endSession(book, session.person.id, session.id);
  return secret;
}

/** @returns whether there was one. */
export async function endSession(book: Book, account: string, id: string): Promise<boolean> {
  const ended = await book.db
    .deleteFrom("sessions")
    .where("account", "=", account)
    .where("id", "=", id)
    .returning("id")
    .executeTakeFirst();
  return ended !== undefined;
}

/** Ends all sessions of an account but one. @returns how many. */
export async function endSessions(book: Book, account: string, but?: string): Promise<number> {
  const ended = await book.db
    .deleteFrom("sessions")
    .where("account", "=", account)
    .$if(but !== undefined, (query) => query.where("id", "!=", but ?? ""))
    .returning("id")
    .execute();
  return ended.length;
}

/** The account has no second factor any more: no session and no token has shown one. */
export async function forgetSecondFactor(book: Book, account: string): Promise<void> {
  await book.db
    .updateTable("sessions")
    .set({ second_factor_at: null })
    .where("account", "=", account)
    .execute();
  await book.db
    .deleteFrom("api_tokens")
    .where("account", "=", account)
    .where("second_factor", "=", 1)
    .execute();
}

/** Forgets what no longer holds. */
export async function forgetSessions(book: Book): Promise<void> {
  const now = nowOf(book);
  await book.db
    .deleteFrom("sessions")
    .where(({ eb, or }) => or([eb("seen_at", "<", now - IDLE_MS), eb("created_at", "<", now - ABSOLUTE_MS)]))
    .execute();
}
