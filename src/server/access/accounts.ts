import type { Selectable } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../issue.ts";
import type { AccountTable } from "../tables/account-tables.ts";
import { type Book, nowOf } from "./book.ts";
import { hashPassword } from "./secrets/password-hash.ts";
import { checkPassword } from "./secrets/password-rules.ts";
import { newId } from "./secrets/random.ts";

export type Account = Selectable<AccountTable>;

export interface NewAccount {
  /** login name or e-mail address, as typed */
  readonly login: string;
  readonly name: string;
  readonly password: string;
  readonly isAdmin: boolean;
}

/** As login names are compared. */
export const plainLogin = (typed: string): string => typed.normalize("NFKC").trim().toLowerCase();

/**
 * Makes an account.
 *
 * Errors: access.login-taken, those of checkPassword, access.busy.
 */
export async function makeAccount(book: Book, wanted: NewAccount): Promise<Result<string, Issue>> {
  const login = plainLogin(wanted.login);
  const checked = checkPassword(wanted.password, [login, wanted.name]);
  if (!checked.ok) return checked;
  const password = await hashPassword(wanted.password);
  if (!password.ok) return password;
  const id = newId();
  const made = await book.db
    .insertInto("accounts")
    .values({
      id,
      login,
      name: wanted.name.trim(),
      password: password.value,
      is_admin: wanted.isAdmin ? 1 : 0,
      disabled: 0,
      created_at: nowOf(book),
      totp_secret: null,
      totp_step: 0,
    })
    .onConflict((conflict) => conflict.column("login").doNothing())
    .returning("id")
    .executeTakeFirst();
  return made === undefined ? fail(error("access.login-taken", {}, "login")) : ok(id);
}

/**
 * Gives an account another password. The caller ends its sessions.
 *
 * Errors: those of checkPassword, access.busy.
 */
export async function changePassword(
  book: Book,
  account: Account,
  password: string,
): Promise<Result<true, Issue>> {
  const checked = checkPassword(password, [account.login, account.name]);
  if (!checked.ok) return checked;
  const hash = await hashPassword(password);
  if (!hash.ok) return hash;
  await book.db.updateTable("accounts").set({ password: hash.value }).where("id", "=", account.id).execute();
  // whoever knew the old password may have signed in from a browser of theirs
  await book.db.deleteFrom("known_browsers").where("account", "=", account.id).execute();
  return ok(true);
}

export const accountById = (book: Book, id: string): Promise<Account | undefined> =>
  book.db.selectFrom("accounts").selectAll().where("id", "=", id).executeTakeFirst();

export const accountByLogin = (book: Book, typed: string): Promise<Account | undefined> =>
  book.db.selectFrom("accounts").selectAll().where("login", "=", plainLogin(typed)).executeTakeFirst();

export const allAccounts = (book: Book): Promise<readonly Account[]> =>
  book.db.selectFrom("accounts").selectAll().orderBy("login").execute();

/** Whether somebody can administer: without anybody the server offers to set itself up. */
export async function hasAdministrator(book: Book, but?: string): Promise<boolean> {
  const found = await book.db
    .selectFrom("accounts")
    .select("id")
    .where("is_admin", "=", 1)
    .where("disabled", "=", 0)
    .$if(but !== undefined, (query) => query.where("id", "!=", but ?? ""))
    .executeTakeFirst();
  return found !== undefined;
}
