import {
  type AuthenticationResponseJSON,
  type AuthenticatorTransport,
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type PublicKeyCredentialCreationOptionsJSON,
  type PublicKeyCredentialRequestOptionsJSON,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from "@simplewebauthn/server";
import type { Selectable } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import type { PasskeyTable } from "../tables/account-tables.ts";
import type { Account } from "./accounts.ts";
import { type Book, nowOf } from "./book.ts";
import { CHALLENGE_MS, newChallenge, takeChallenge } from "./challenges.ts";

export type Passkey = Selectable<PasskeyTable>;

/** A question, and the name under which its answer comes back. */
export interface Asked<T> {
  readonly challenge: string;
  readonly options: T;
}

interface Party {
  readonly id: string;
  readonly origin: string;
}

/**
 * For which address passkeys are made. It is set up, never taken from a request.
 *
 * Errors: access.no-public-address.
 */
function partyOf(book: Book): Result<Party, Issue> {
  const { publicAddress } = book.settings;
  if (publicAddress === undefined || !URL.canParse(publicAddress))
    return fail(error("access.no-public-address"));
  const { hostname, origin } = new URL(publicAddress);
  return ok({ id: hostname, origin });
}

export const passkeysOf = (book: Book, account: string): Promise<readonly Passkey[]> =>
  book.db.selectFrom("passkeys").selectAll().where("account", "=", account).orderBy("created_at").execute();

/**
 * Asks an authenticator for a new passkey that can sign in by itself: it checks who holds it (PIN, finger, face).
 *
 * Errors: access.no-public-address.
 */
export async function askForPasskey(
  book: Book,
  account: Account,
): Promise<Result<Asked<PublicKeyCredentialCreationOptionsJSON>, Issue>> {
  const party = partyOf(book);
  if (!party.ok) return party;
  const { id, challenge } = await newChallenge(book, "register", account.id);
  const options = await generateRegistrationOptions({
    rpName: "Toeline",
    rpID: party.value.id,
    userName: account.login,
    userDisplayName: account.name,
    userID: new TextEncoder().encode(account.id),
    challenge: Buffer.from(challenge, "base64url"),
    timeout: CHALLENGE_MS,
    attestationType: "none",
    excludeCredentials: (await passkeysOf(book, account.id)).map(described),
    authenticatorSelection: { residentKey: "required", userVerification: "required" },
  });
  return ok({ challenge: id, options });
}

/**
 * Takes a new passkey over.
 *
 * Errors: access.no-public-address, access.passkey-refused.
 */
export async function addPasskey(
  book: Book,
  account: Account,
  answer: { readonly challenge: string; readonly name: string; readonly response: RegistrationResponseJSON },
): Promise<Result<true, Issue>> {
  const party = partyOf(book);
  if (!party.ok) return party;
  const challenge = await takeChallenge(book, answer.challenge, "register", account.id);
  if (challenge === undefined) return fail(error("access.passkey-refused"));
  const verified = await attempt(() =>
    verifyRegistrationResponse({
      response: answer.response,
      expectedChallenge: challenge,
      expectedOrigin: party.value.origin,
      expectedRPID: party.value.id,
      requireUserVerification: true,
    }),
  );
  if (!verified.ok || !verified.value.verified) return fail(error("access.passkey-refused"));
  const { credential } = verified.value.registrationInfo;
  const added = await book.db
    .insertInto("passkeys")
    .values({
      id: credential.id,
      account: account.id,
      name: answer.name,
      public_key: Buffer.from(credential.publicKey).toString("base64url"),
      counter: credential.counter,
      transports: JSON.stringify(credential.transports ?? []),
      created_at: nowOf(book),
      used_at: null,
    })
    .onConflict((conflict) => conflict.column("id").doNothing())
    .returning("id")
    .executeTakeFirst();
  return added === undefined ? fail(error("access.passkey-refused")) : ok(true);
}

/**
 * Asks for a passkey: of an account as its second factor, or of whoever has one in order to sign in.
 *
 * Errors: access.no-public-address.
 */
export async function askPasskey(
  book: Book,
  account: string | null,
): Promise<Result<Asked<PublicKeyCredentialRequestOptionsJSON>, Issue>> {
  const party = partyOf(book);
  if (!party.ok) return party;
  const { id, challenge } = await newChallenge(book, purposeOf(account), account);
  const options = await generateAuthenticationOptions({
    rpID: party.value.id,
    challenge: Buffer.from(challenge, "base64url"),
    timeout: CHALLENGE_MS,
    userVerification: "required",
    // an empty list lets the authenticator offer what it has; nothing is told about which accounts there are
    allowCredentials: account === null ? [] : (await passkeysOf(book, account)).map(described),
  });
  return ok({ challenge: id, options });
}

/**
 * Checks the answer of a passkey.
 *
 * @param account whose passkey it must be; null: whoever it belongs to.
 * @returns the account.
 *
 * Errors: access.no-public-address, access.passkey-refused.
 */
export async function checkPasskey(
  book: Book,
  account: string | null,
  answer: { readonly challenge: string; readonly response: AuthenticationResponseJSON },
): Promise<Result<string, Issue>> {
  const party = partyOf(book);
  if (!party.ok) return party;
  const challenge = await takeChallenge(book, answer.challenge, purposeOf(account), account);
  const passkey = await book.db
    .selectFrom("passkeys")
    .selectAll()
    .where("id", "=", answer.response.id)
    .executeTakeFirst();
  if (challenge === undefined || passkey === undefined) return fail(error("access.passkey-refused"));
  if (account !== null && passkey.account !== account) return fail(error("access.passkey-refused"));
  const verified = await attempt(() =>
    verifyAuthenticationResponse({
      response: answer.response,
      expectedChallenge: challenge,
      expectedOrigin: party.value.origin,
      expectedRPID: party.value.id,
      requireUserVerification: true,
      credential: {
        id: passkey.id,
        publicKey: new Uint8Array(Buffer.from(passkey.public_key, "base64url")),
        counter: passkey.counter,
        transports: transportsOf(passkey),
      },
    }),
  );
  if (!verified.ok || !verified.value.verified) return fail(error("access.passkey-refused"));
  await book.db
    .updateTable("passkeys")
    .set({ counter: verified.value.authenticationInfo.newCounter, used_at: nowOf(book) })
    .where("id", "=", passkey.id)
    .execute();
  return ok(passkey.account);
}

/** @returns whether there was one. */
export async function removePasskey(book: Book, account: string, id: string): Promise<boolean> {
  const removed = await book.db
    .deleteFrom("passkeys")
    .where("account", "=", account)
    .where("id", "=", id)
    .returning("id")
    .executeTakeFirst();
  return removed !== undefined;
}

const purposeOf = (account: string | null) => (account === null ? "sign-in" : "second-factor");
const transportsOf = ({ transports }: Passkey): AuthenticatorTransport[] =>
  JSON.parse(transports) as AuthenticatorTransport[];
const described = (passkey: Passkey) => ({ id: passkey.id, transports: transportsOf(passkey) });
