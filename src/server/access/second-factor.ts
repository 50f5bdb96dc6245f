import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../issue.ts";
import type { Account } from "./accounts.ts";
import { type Book, nowOf } from "./book.ts";
import { newRecoveryCode, RECOVERY_CODES, recoveryCodeHash } from "./secrets/recovery-code.ts";
import { stepOfCode } from "./secrets/time-code.ts";

/** What an account can show besides its password. */
export interface Factors {
  readonly hasTimeCodes: boolean;
  readonly passkeys: number;
  /** codes on paper that were not used yet; none counts as a factor of its own */
  readonly recoveryCodes: number;
}

export const hasFactor = ({ hasTimeCodes, passkeys }: Factors): boolean => hasTimeCodes || passkeys > 0;

export async function factorsOf(book: Book, account: Pick<Account, "id" | "totp_secret">): Promise<Factors> {
  const count = async (table: "passkeys" | "recovery_codes"): Promise<number> => {
    const row = await book.db
      .selectFrom(table)
      .select(({ fn }) => fn.countAll<number>().as("count"))
      .where("account", "=", account.id)
      .executeTakeFirst();
    return row?.count ?? 0;
  };
  return {
    hasTimeCodes: account.totp_secret !== null,
    passkeys: await count("passkeys"),
    recoveryCodes: await count("recovery_codes"),
  };
}

/**
 * Takes a code: of an authenticator program, or one from paper. Each works once.
 *
 * Errors: access.wrong-code.
 */
export async function takeCode(
  book: Book,
  account: Account,
  typed: string,
): Promise<Result<"time-code" | "recovery-code", Issue>> {
  if (await takeTimeCode(book, account, typed)) return ok("time-code");
  const used = await book.db
    .deleteFrom("recovery_codes")
    .where("account", "=", account.id)
    .where("hash", "=", recoveryCodeHash(typed))
    .returning("hash")
    .executeTakeFirst();
  return used === undefined ? fail(error("access.wrong-code", {}, "code")) : ok("recovery-code");
}

/** The step is raised by the same statement that asks for it: of two requests with one code only one is right. */
async function takeTimeCode(book: Book, account: Account, typed: string): Promise<boolean> {
  const code = typed.replaceAll(/\s/g, "");
  if (account.totp_secret === null) return false;
  const step = stepOfCode(account.totp_secret, code, nowOf(book), account.totp_step);
  if (step === undefined) return false;
  const taken = await book.db
    .updateTable("accounts")
    .set({ totp_step: step })
    .where("id", "=", account.id)
    .where("totp_step", "<", step)
    .returning("id")
    .executeTakeFirst();
  return taken !== undefined;
}

/**
 * Begins with an authenticator program, once it has shown that it has the secret.
 *
 * Errors: access.wrong-code.
 */
export async function addTimeCodes(
  book: Book,
  account: Account,
  secret: string,
  code: string,
): Promise<Result<true, Issue>> {
  const step = stepOfCode(secret, code.replaceAll(/\s/g, ""), nowOf(book), 0);
  if (step === undefined) return fail(error("access.wrong-code", {}, "code"));
  await book.db
    .updateTable("accounts")
    .set({ totp_secret: secret, totp_step: step })
    .where("id", "=", account.id)
    .execute();
  return ok(true);
}

/** @returns whether there was one. */
export async function removeTimeCodes(book: Book, account: string): Promise<boolean> {
  const removed = await book.db
    .updateTable("accounts")
    .set({ totp_secret: null })
    .where("id", "=", account)
    .where("totp_secret", "is not", null)
    .returning("id")
    .executeTakeFirst();
  return removed !== undefined;
}

/** New codes in place of the old ones; the answer is the only time they are seen. */
export async function makeRecoveryCodes(book: Book, account: string): Promise<readonly string[]> {
  const codes = Array.from({ length: RECOVERY_CODES }, newRecoveryCode);
  await book.db.transaction().execute(async (transaction) => {
    await transaction.deleteFrom("recovery_codes").where("account", "=", account).execute();
    const rows = codes.map((code) => ({ account, hash: recoveryCodeHash(code) }));
    await transaction.insertInto("recovery_codes").values(rows).execute();
  });
  return codes;
}

/** All that an account could show besides its password, for somebody who has lost it. */
export async function removeFactors(book: Book, account: string): Promise<void> {
  await removeTimeCodes(book, account);
  await book.db.deleteFrom("passkeys").where("account", "=", account).execute();
  await book.db.deleteFrom("recovery_codes").where("account", "=", account).execute();
}
