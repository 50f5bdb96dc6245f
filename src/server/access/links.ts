import type { Selectable } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../issue.ts";
import type { OneTimeLinkTable } from "../tables/account-tables.ts";
import { type Book, DAY_MS, nowOf } from "./book.ts";
import type { Role } from "./person.ts";
import { hashOf, newId, newSecret } from "./secrets/random.ts";

/** How long a link works unless its maker says otherwise, and at most. */
export const LINK_MS = 3 * DAY_MS;
export const MAX_LINK_DAYS = 14;
/** In vain so often, and the link is dead: it is not for trying which login names are taken. */
const MAX_FAILURES = 10;
/** Who makes the link for the first administrator. */
const THE_SERVER = "server";

export type OneTimeLink = Selectable<OneTimeLinkTable>;

export interface Invitation {
  /** undefined: an administrator of everything */
  readonly job: string | undefined;
  readonly role: Role;
  readonly by: string;
  readonly lastsMs: number;
}

/** @returns the secret of the link, seen only now. */
export const invite = (book: Book, { job, role, by, lastsMs }: Invitation): Promise<string> =>
  makeLink(book, { purpose: "invitation", account: null, job: job ?? null, role }, by, lastsMs);

/** @returns the secret of a link with which somebody sets a new password. */
export const passwordLink = (book: Book, account: string, by: string): Promise<string> =>
  makeLink(book, { purpose: "password", account, job: null, role: null }, by, LINK_MS);

async function makeLink(
  book: Book,
  about: Pick<OneTimeLinkTable, "purpose" | "account" | "job" | "role">,
  by: string,
  lastsMs: number,
): Promise<string> {
  const secret = newSecret();
  const now = nowOf(book);
  await book.db
    .deleteFrom("one_time_links")
    .where("expires_at", "<", now - LINK_MS)
    .execute();
  await book.db
    .insertInto("one_time_links")
    .values({
      ...about,
      hash: hashOf(secret),
      id: newId(),
      created_by: by,
      created_at: now,
      expires_at: now + lastsMs,
      failures: 0,
    })
    .execute();
  return secret;
}

/** A link with which the first administrator makes an account. It works for a day, like all until one of them was used. */
export const setUpInvitation = (book: Book): Promise<string> =>
  invite(book, { job: undefined, role: "admin", by: THE_SERVER, lastsMs: DAY_MS });

/** Takes back all links for the first administrator: there is one now. */
export async function endSetUp(book: Book): Promise<void> {
  await book.db.deleteFrom("one_time_links").where("created_by", "=", THE_SERVER).execute();
}

/** Where a person opens a link: the secret stands behind the #, which browsers do not send and proxies do not log. */
export const linkPath = (secret: string, purpose: OneTimeLinkTable["purpose"]): string =>
  `/${purpose === "password" ? "new-password" : "join"}#${secret}`;

/**
 * What a link is for, without using it.
 *
 * Errors: access.link-dead.
 */
export async function readLink(
  book: Book,
  secret: string,
  purpose: OneTimeLinkTable["purpose"],
): Promise<Result<OneTimeLink, Issue>> {
  const link = await book.db
    .selectFrom("one_time_links")
    .selectAll()
    .where("hash", "=", hashOf(secret))
    .where("purpose", "=", purpose)
    .where("expires_at", ">", nowOf(book))
    .where("failures", "<", MAX_FAILURES)
    .executeTakeFirst();
  return link === undefined ? fail(error("access.link-dead")) : ok(link);
}

/**
 * Uses a link for something. It is taken away first, so that of two who use it at once only one does, and is put back if the
 * work was in vain.
 *
 * Errors: access.link-dead, those of the work.
 */
export async function redeemLink<T>(
  book: Book,
  secret: string,
  purpose: OneTimeLinkTable["purpose"],
  work: (link: OneTimeLink) => Promise<Result<T, Issue>>,
): Promise<Result<T, Issue>> {
  const link = await readLink(book, secret, purpose);
  if (!link.ok) return link;
  const taken = await book.db
    .deleteFrom("one_time_links")
    .where("hash", "=", link.value.hash)
    .returning("hash")
    .executeTakeFirst();
  if (taken === undefined) return fail(error("access.link-dead"));
  const done = await work(link.value);
  if (done.ok) return done;
  const failures = link.value.failures + 1;
  await book.db
    .insertInto("one_time_links")
    .values({ ...link.value, failures })
    .execute();
  return done;
}

/** Links that still work, for a job or (undefined) for everything. */
export const openInvitations = (book: Book, job: string | undefined): Promise<readonly OneTimeLink[]> =>
  book.db
    .selectFrom("one_time_links")
    .selectAll()
    .where("purpose", "=", "invitation")
    .where("job", job === undefined ? "is" : "=", job ?? null)
    .where("expires_at", ">", nowOf(book))
    .orderBy("created_at")
    .execute();

/** @returns whether there was one. */
export async function withdrawInvitation(book: Book, job: string | undefined, id: string): Promise<boolean> {
  const withdrawn = await book.db
    .deleteFrom("one_time_links")
    .where("id", "=", id)
    .where("purpose", "=", "invitation")
    .where("job", job === undefined ? "is" : "=", job ?? null)
    .returning("id")
    .executeTakeFirst();
  return withdrawn !== undefined;
}
