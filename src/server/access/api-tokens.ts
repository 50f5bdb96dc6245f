import type { Selectable } from "kysely";
import type { ApiTokenTable } from "../tables/account-tables.ts";
import { type Book, DAY_MS, nowOf } from "./book.ts";
import { type Person, RIGHTS, type Right } from "./person.ts";
import { hashOf, newId, newSecret } from "./secrets/random.ts";
import { NOTED_EVERY_MS } from "./session-limits.ts";

/** Begins every token, so that one that was left lying about is recognised. */
export const TOKEN_PREFIX = "toe_";
export const MAX_TOKEN_DAYS = 366;

export type ApiToken = Selectable<ApiTokenTable>;

export interface NewToken {
  readonly name: string;
  readonly scopes: readonly Right[];
  readonly days: number;
}

/** Makes a token for a program of a person. @returns the token, seen only now, and the id under which it is listed. */
export async function makeToken(
  book: Book,
  person: Person,
  wanted: NewToken,
): Promise<{ readonly id: string; readonly token: string }> {
  const token = `${TOKEN_PREFIX}${newSecret()}`;
  const id = newId();
  const now = nowOf(book);
  await book.db
    .insertInto("api_tokens")
    .values({
      hash: hashOf(token),
      id,
      account: person.id,
      name: wanted.name,
      scopes: JSON.stringify(wanted.scopes),
      second_factor: person.hasSecondFactor ? 1 : 0,
      created_at: now,
      expires_at: now + wanted.days * DAY_MS,
      used_at: null,
    })
    .execute();
  return { id, token };
}

/** Whose program asks; undefined for a token that does not hold. */
export async function personOfToken(book: Book, token: string): Promise<Person | undefined> {
  const now = nowOf(book);
  const row = await book.db
    .selectFrom("api_tokens")
    .innerJoin("accounts", "accounts.id", "api_tokens.account")
    .select(["api_tokens.id", "account", "accounts.name", "is_admin", "scopes", "second_factor", "used_at"])
    .where("hash", "=", hashOf(token))
    .where("expires_at", ">", now)
    .where("disabled", "=", 0)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  if (now - (row.used_at ?? 0) >= NOTED_EVERY_MS)
    await book.db.updateTable("api_tokens").set({ used_at: now }).where("id", "=", row.id).execute();
  return {
    id: row.account,
    name: row.name,
    by: "token",
    isAdmin: row.is_admin === 1,
    hasSecondFactor: row.second_factor === 1,
    scopes: scopesOf(row),
  };
}

export function scopesOf({ scopes }: Pick<ApiToken, "scopes">): readonly Right[] {
  const words = JSON.parse(scopes) as readonly unknown[];
  return RIGHTS.filter((right) => words.includes(right));
}

export const tokensOf = (book: Book, account: string): Promise<readonly ApiToken[]> =>
  book.db
    .selectFrom("api_tokens")
    .selectAll()
    .where("account", "=", account)
    .where("expires_at", ">", nowOf(book))
    .orderBy("created_at")
    .execute();

/** @returns whether there was one. */
export async function endToken(book: Book, account: string, id: string): Promise<boolean> {
  const ended = await book.db
    .deleteFrom("api_tokens")
    .where("account", "=", account)
    .where("id", "=", id)
    .returning("id")
    .executeTakeFirst();
  return ended !== undefined;
}

export async function endTokens(book: Book, account: string): Promise<void> {
  await book.db.deleteFrom("api_tokens").where("account", "=", account).execute();
}
