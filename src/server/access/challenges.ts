import type { ChallengeTable } from "../tables/account-tables.ts";
import { type Book, MINUTE_MS, nowOf } from "./book.ts";
import { newId, newSecret } from "./secrets/random.ts";

type Purpose = ChallengeTable["purpose"];

/** How long an authenticator has to answer. */
export const CHALLENGE_MS = 5 * MINUTE_MS;

export interface Challenge {
  readonly id: string;
  readonly challenge: string;
}

/** A question to an authenticator, kept in the database so that any server process can check the answer. */
export async function newChallenge(
  book: Book,
  purpose: Purpose,
  account: string | null,
  challenge: string = newSecret(),
): Promise<Challenge> {
  const now = nowOf(book);
  await book.db.deleteFrom("challenges").where("expires_at", "<", now).execute();
  const made = { id: newId(), challenge };
  await book.db
    .insertInto("challenges")
    .values({ ...made, purpose, account, expires_at: now + CHALLENGE_MS })
    .execute();
  return made;
}

/** The question of an answer, left where it is: somebody may mistype a code. */
export async function readChallenge(
  book: Book,
  id: string,
  purpose: Purpose,
  account: string | null,
): Promise<string | undefined> {
  const row = await book.db.selectFrom("challenges").selectAll().where("id", "=", id).executeTakeFirst();
  const fits = row?.purpose === purpose && row.account === account && row.expires_at > nowOf(book);
  return fits ? row.challenge : undefined;
}

/** The question of an answer; gone with it, so that no answer counts twice. */
export async function takeChallenge(
  book: Book,
  id: string,
  purpose: Purpose,
  account: string | null,
): Promise<string | undefined> {
  const found = await readChallenge(book, id, purpose, account);
  const taken = await book.db
    .deleteFrom("challenges")
    .where("id", "=", id)
    .returning("id")
    .executeTakeFirst();
  return taken === undefined ? undefined : found;
}
