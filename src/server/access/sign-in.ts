import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../issue.ts";
import { type Account, accountByLogin, plainLogin } from "./accounts.ts";
import { type Book, type Caller, nowOf, SECOND_MS } from "./book.ts";
import { factorsOf, hasFactor } from "./second-factor.ts";
import { verifyPassword } from "./secrets/password-hash.ts";
import { hashOf, newSecret } from "./secrets/random.ts";
import { writeEvent } from "./security-events.ts";
import { beginSession, forgetSessions } from "./sessions.ts";
import { type Counted, forgetTries, giveBack, takeTry } from "./tries.ts";

export interface SignInRequest extends Caller {
  readonly login: string;
  readonly password: string;
  /** what the browser has kept from signing in before */
  readonly browser: string | undefined;
}

export interface SignedIn {
  readonly account: Account;
  readonly session: string;
  /** to be kept by the browser: marks it as one in which this person has signed in */
  readonly browser: string;
  readonly isPending: boolean;
}

/**
 * Signs in with a password. An unknown name, a disabled account and a wrong password are answered alike and take as long.
 *
 * Errors: access.slow-down with the seconds to wait, access.wrong-login, access.busy.
 */
export async function signIn(book: Book, request: SignInRequest): Promise<Result<SignedIn, Issue>> {
  const counted = await countedFor(book, request);
  const free = await takeTries(book, counted);
  if (!free.ok) {
    const isNews = (await takeTry(book, { pace: "noted", key: request.address })) === 0;
    if (isNews) await writeEvent(book, { what: "sign-in-slowed", who: undefined, address: request.address });
    return free;
  }
  const account = await accountByLogin(book, request.login);
  const isRight = await verifyPassword(request.password, account?.password);
  if (!isRight.ok) return isRight;
  if (!isRight.value || account === undefined || account.disabled === 1) {
    await writeEvent(book, { what: "sign-in-failed", who: account?.id, address: request.address });
    return fail(error("access.wrong-login"));
  }
  for (const one of counted) await giveBack(book, one);
  await forgetTries(book);
  await forgetSessions(book);
  const isPending = hasFactor(await factorsOf(book, account));
  const session = await beginSession(book, account.id, request, isPending ? "pending" : "password-only");
  await writeEvent(book, {
    what: "signed-in",
    who: account.id,
    address: request.address,
    details: { by: "password" },
  });
  return ok({ account, session, browser: await markBrowser(book, account.id), isPending });
}

/** A browser in which this person has signed in before is counted by itself: guesses from elsewhere cannot keep its user out. */
async function countedFor(book: Book, request: SignInRequest): Promise<readonly Counted[]> {
  const login = plainLogin(request.login);
  const network = networkOf(request.address);
  const known = request.browser !== undefined && (await isKnownBrowser(book, login, request.browser));
  if (known) return [{ pace: "knownBrowser", key: hashOf(request.browser ?? "") }];
  return [
    { pace: "address", key: network },
    { pace: "accountFromAddress", key: `${login} ${network}` },
    { pace: "account", key: login },
  ];
}

/**
 * Takes a try of each kind that is counted; stops at the first that has none left, so that somebody who is slowed down uses up
 * nothing that counts for others.
 *
 * Errors: access.slow-down.
 */
export async function takeTries(book: Book, counted: readonly Counted[]): Promise<Result<true, Issue>> {
  for (const one of counted) {
    const wait = await takeTry(book, one);
    if (wait > 0) return fail(error("access.slow-down", { seconds: Math.ceil(wait / SECOND_MS) }));
  }
  return ok(true);
}

/** Whoever has one address of version 6 has the whole /64 of it (RFC 6177, section 2). */
const networkOf = (address: string): string =>
  address.includes(":") && !address.startsWith("::ffff:") ? groupsOf(address).slice(0, 4).join(":") : address;

function groupsOf(address: string): readonly string[] {
  const [head = "", tail = ""] = address.split("::");
  const [before, after] = [head, tail].map((part) => part.split(":").filter((group) => group !== "")) as [
    string[],
    string[],
  ];
  return [
    ...before,
    ...Array.from({ length: Math.max(0, 8 - before.length - after.length) }, () => "0"),
    ...after,
  ];
}

async function isKnownBrowser(book: Book, login: string, browser: string): Promise<boolean> {
  const row = await book.db
    .selectFrom("known_browsers")
    .innerJoin("accounts", "accounts.id", "known_browsers.account")
    .select("hash")
    .where("hash", "=", hashOf(browser))
    .where("login", "=", login)
    .executeTakeFirst();
  return row !== undefined;
}

/** @returns what the browser keeps; new each time, so that one that was copied is worth little. */
export async function markBrowser(book: Book, account: string): Promise<string> {
  const browser = newSecret();
  await book.db
    .insertInto("known_browsers")
    .values({ hash: hashOf(browser), account, seen_at: nowOf(book) })
    .execute();
  return browser;
}
