import { type Book, DAY_MS, HOUR_MS, MINUTE_MS, nowOf, SECOND_MS } from "./book.ts";
import { hashOf } from "./secrets/random.ts";

/** How fast something may be tried: so many at once, and from then on one after each pause. docs/security.md lists the same. */
export interface Pace {
  readonly atOnce: number;
  readonly pauseMs: number;
}

export const PACES = {
  /** one account from one address */
  accountFromAddress: { atOnce: 5, pauseMs: 30 * SECOND_MS },
  /** one account from a browser in which its person has signed in before */
  knownBrowser: { atOnce: 10, pauseMs: 20 * SECOND_MS },
  /** one account from all addresses together, without known browsers */
  account: { atOnce: 30, pauseMs: MINUTE_MS },
  /** all accounts from one address: an office behind one address signs in one after the other */
  address: { atOnce: 60, pauseMs: 5 * SECOND_MS },
  /** codes and passkeys of one account whose password was right */
  secondFactor: { atOnce: 5, pauseMs: MINUTE_MS },
  /** writing down that somebody is slowed down: guessing must not fill the list of what happened */
  noted: { atOnce: 1, pauseMs: HOUR_MS },
} as const satisfies Readonly<Record<string, Pace>>;

export type PaceName = keyof typeof PACES;

/** What is counted: a pace, and for whom. */
export interface Counted {
  readonly pace: PaceName;
  readonly key: string;
}

const keyOf = ({ pace, key }: Counted): string => `${pace} ${hashOf(key)}`;

/**
 * Takes one try, counted before it is known whether it is right, so that many at once are not more than one after the other. One
 * statement, so that it holds for all server processes together.
 *
 * @returns 0 if it may be tried; otherwise milliseconds until it may.
 *
 * Source: the virtual scheduling form of the generic cell rate algorithm, ITU-T I.371 (from memory).
 */
export async function takeTry(book: Book, counted: Counted): Promise<number> {
  const now = nowOf(book);
  const { atOnce, pauseMs } = PACES[counted.pace];
  const key = keyOf(counted);
  const allowed = now + (atOnce - 1) * pauseMs;
  const taken = await book.db
    .insertInto("tries")
    .values({ key, until: now + pauseMs })
    .onConflict((conflict) =>
      conflict
        .column("key")
        .doUpdateSet(({ eb, ref }) => ({
          until: eb(
            eb.case().when(ref("tries.until"), ">", now).then(ref("tries.until")).else(now).end(),
            "+",
            pauseMs,
          ),
        }))
        .where("tries.until", "<=", allowed),
    )
    .returning("until")
    .executeTakeFirst();
  if (taken !== undefined) return 0;
  const row = await book.db.selectFrom("tries").select("until").where("key", "=", key).executeTakeFirst();
  return Math.max(1, (row?.until ?? now) - allowed);
}

/** Gives a try back that turned out to be right. */
export async function giveBack(book: Book, counted: Counted): Promise<void> {
  const { pauseMs } = PACES[counted.pace];
  await book.db
    .updateTable("tries")
    .set(({ eb }) => ({ until: eb("until", "-", pauseMs) }))
    .where("key", "=", keyOf(counted))
    .execute();
}

/** Forgets what has long been worked off. */
export async function forgetTries(book: Book): Promise<void> {
  await book.db
    .deleteFrom("tries")
    .where("until", "<", nowOf(book) - DAY_MS)
    .execute();
}
