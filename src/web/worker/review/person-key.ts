import { fail, type Issue, type Result } from "#core";
import {
  generateKeyPair,
  type JobState,
  type KeyPair,
  type Signer,
  signerFromKeyPair,
  thingKey,
} from "#records";
import type { Author, NewStatement } from "../desk.ts";
import { openKeptThings } from "../device/kept-things.ts";
import { error } from "../issue.ts";

/**
 * The key with which a person signs in this browser; made when it is first asked for. It cannot be read out of the browser.
 *
 * Errors: desk.nothing-kept, records.no-signatures.
 */
export async function personSigner(person: string): Promise<Result<Signer, Issue>> {
  const kept = await openKeptThings();
  if (!kept.ok) return fail(error("desk.nothing-kept", { found: kept.error }));
  const name = `person-key/${person}`;
  const read = await kept.value.get(name);
  if (read.ok && read.value !== undefined) return signerFromKeyPair(read.value as KeyPair);
  const made = await generateKeyPair();
  if (!made.ok) return made;
  const put = await kept.value.put(name, made.value);
  return put.ok ? signerFromKeyPair(made.value) : fail(error("desk.nothing-kept", { found: put.error }));
}

/** The entry that announces a key, where the job does not know it yet. */
export function keyAnnouncement(
  state: JobState,
  { id, name }: Author,
  { publicKey }: Signer,
): readonly NewStatement[] {
  const keys = state.things[thingKey("person", id)]?.lists["keys"] ?? [];
  const isKnown = keys.some(({ value }) => (value as { public_key?: unknown }).public_key === publicKey);
  return isKnown ? [] : [{ kind: "person", body: { person: id, name, public_key: publicKey } }];
}
