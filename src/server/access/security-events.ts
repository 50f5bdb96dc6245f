import type { Transaction } from "kysely";
import { canonicalJson, type JsonObject, parseJson } from "#records";
import type { SecurityEventTable } from "../tables/account-tables.ts";
import type { OfficeTables } from "../tables/office-tables.ts";
import { type Book, nowOf, timeText } from "./book.ts";
import { hashOf } from "./secrets/random.ts";

/** What is written down. The words are stable: they are what people search for. */
export type SecurityEventName =
  | "signed-in"
  | "sign-in-failed"
  | "sign-in-slowed"
  | "signed-out"
  | "session-ended"
  | "second-factor-shown"
  | "second-factor-failed"
  | "second-factor-added"
  | "second-factor-removed"
  | "recovery-codes-made"
  | "recovery-code-used"
  | "account-made"
  | "account-changed"
  | "password-changed"
  | "password-link-made"
  | "invitation-made"
  | "invitation-withdrawn"
  | "invitation-used"
  | "link-refused"
  | "token-made"
  | "token-ended"
  | "role-given"
  | "role-taken"
  | "job-begun"
  | "device-added"
  | "device-revoked"
  | "access-refused";

export interface SecurityEvent {
  readonly what: SecurityEventName;
  /** id of the account; undefined for nobody known */
  readonly who: string | undefined;
  readonly address: string;
  readonly details?: JsonObject;
}

export type WrittenEvent = Omit<SecurityEventTable, "details"> & { readonly details: JsonObject };

const NOBODY = "-";
/** Hash "before the first line". */
const BEGINNING = "0".repeat(64);
const HEAD = 1;

/**
 * Writes down what happened. Lines are only ever added; each holds the hash of the one before, so that a changed or missing line
 * shows. On its own transaction: what was refused is written down although nothing else happens.
 */
export const writeEvent = (book: Book, event: SecurityEvent): Promise<void> =>
  book.db.transaction().execute((transaction) => addEvent(transaction, nowOf(book), event));

async function addEvent(db: Transaction<OfficeTables>, now: number, event: SecurityEvent): Promise<void> {
  // begins with a write, which makes others wait until this line stands
  const head = await db
    .insertInto("security_head")
    .values({ id: HEAD, number: 1, hash: BEGINNING })
    .onConflict((conflict) =>
      conflict
        .column("id")
        .doUpdateSet(({ eb, ref }) => ({ number: eb(ref("security_head.number"), "+", 1) })),
    )
    .returning(["number", "hash"])
    .executeTakeFirstOrThrow();
  const line = {
    number: head.number,
    at: timeText(now),
    what: event.what,
    who: event.who ?? NOBODY,
    address: event.address,
    details: JSON.stringify(event.details ?? {}),
  };
  const hash = hashOfLine(head.hash, line);
  await db
    .insertInto("security_events")
    .values({ ...line, hash })
    .execute();
  await db.updateTable("security_head").set({ hash }).where("id", "=", HEAD).execute();
}

/** Over everything that stands in the line, and the hash of the line before. */
function hashOfLine(before: string, line: Omit<SecurityEventTable, "hash">): string {
  const text = canonicalJson({ before, ...line });
  return hashOf(text.ok ? text.value : JSON.stringify([before, ...Object.values(line)]));
}

/** The latest lines before a number, newest first. */
export async function readEvents(
  book: Book,
  before: number | undefined,
  count: number,
): Promise<readonly WrittenEvent[]> {
  const rows = await book.db
    .selectFrom("security_events")
    .selectAll()
    .$if(before !== undefined, (query) => query.where("number", "<", before ?? 0))
    .orderBy("number", "desc")
    .limit(count)
    .execute();
  return rows.map((row) => ({ ...row, details: detailsOf(row.details) }));
}

function detailsOf(text: string): JsonObject {
  const read = parseJson(text);
  return read.ok && typeof read.value === "object" && read.value !== null && !Array.isArray(read.value)
    ? (read.value as JsonObject)
    : {};
}

/**
 * Checks the whole list from its beginning.
 *
 * @returns number of the first line that was changed, or after which one is missing; undefined if all is as it was written.
 */
export async function firstBadEvent(book: Book): Promise<number | undefined> {
  const page = 1000;
  let before = BEGINNING;
  let number = 0;
  for (;;) {
    const rows = await book.db
      .selectFrom("security_events")
      .selectAll()
      .where("number", ">", number)
      .orderBy("number")
      .limit(page)
      .execute();
    for (const { hash, ...line } of rows) {
      if (line.number !== number + 1 || hashOfLine(before, line) !== hash) return number + 1;
      [number, before] = [line.number, hash];
    }
    if (rows.length < page) break;
  }
  const head = await book.db.selectFrom("security_head").selectAll().executeTakeFirst();
  return head === undefined || (head.number === number && head.hash === before) ? undefined : number + 1;
}
