import type { Selectable } from "kysely";
import type { AccountDeviceTable } from "../tables/account-tables.ts";
import { type Book, nowOf } from "./book.ts";

/** A device with which an account works. @returns false if it is somebody else's or was revoked. */
export async function rememberDevice(
  book: Book,
  account: string,
  device: string,
): Promise<"added" | "known" | "refused"> {
  const added = await book.db
    .insertInto("account_devices")
    .values({ device, account, since: nowOf(book), revoked: 0 })
    .onConflict((conflict) => conflict.column("device").doNothing())
    .returning("device")
    .executeTakeFirst();
  if (added !== undefined) return "added";
  return (await personOfDevice(book, device)) === account ? "known" : "refused";
}

export async function personOfDevice(book: Book, device: string): Promise<string | undefined> {
  const row = await book.db
    .selectFrom("account_devices")
    .select("account")
    .where("device", "=", device)
    .where("revoked", "=", 0)
    .executeTakeFirst();
  return row?.account;
}

export const devicesOf = (book: Book, account: string): Promise<readonly Selectable<AccountDeviceTable>[]> =>
  book.db.selectFrom("account_devices").selectAll().where("account", "=", account).orderBy("since").execute();

/** @returns whether there was one. */
export async function revokeDevice(book: Book, account: string, device: string): Promise<boolean> {
  const revoked = await book.db
    .updateTable("account_devices")
    .set({ revoked: 1 })
    .where("device", "=", device)
    .where("account", "=", account)
    .returning("device")
    .executeTakeFirst();
  return revoked !== undefined;
}
