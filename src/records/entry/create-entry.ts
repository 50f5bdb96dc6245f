import { contract, fail, type Issue, ok, type Result } from "#core";
import { sha256, utf8 } from "../crypto/hash.ts";
import { hexFromBytes } from "../crypto/hex.ts";
import type { Signer } from "../crypto/keys.ts";
import { error } from "../issue.ts";
import type { JsonObject } from "../json/json-value.ts";
import { kindOf } from "../kinds/registry.ts";
import { canonicalEntry } from "./canonical-entry.ts";
import type { ChainPosition } from "./chain-position.ts";
import { seenSince } from "./chain-position.ts";
import {
  ENTRY_FORMAT,
  type Entry,
  type EntryClock,
  type EntryContent,
  FIRST_KIND,
  MAX_ENTRY_BYTES,
} from "./entry.ts";

/** What somebody writes down. */
export interface Statement {
  readonly author: string;
  readonly kind: string;
  readonly body: JsonObject;
}

/**
 * Makes the next entry of a device's chain: checks the body against its kind, links, hashes and signs it.
 *
 * @param position where the chain of this device stands, see `positionIn` and `positionAfter`.
 * @returns the entry as it will be read back: its numbers and texts are those of the canonical form.
 * @throws ContractError if the signer is not the device of the position, or a chain is begun without the device's announcement.
 *
 * Errors: records.kind-unknown, records.body-shape, records.entry-too-large, and those of canonicalJson.
 */
export async function createEntry(
  position: ChainPosition,
  statement: Statement,
  clock: EntryClock,
  signer: Signer,
): Promise<Result<Entry, readonly Issue[]>> {
  contract(signer.publicKey === position.device, "createEntry: the signer is not the device of the chain");
  contract(
    position.last !== undefined || statement.kind === FIRST_KIND,
    `createEntry: a chain begins with "${FIRST_KIND}", not with "${statement.kind}"`,
  );
  const kind = kindOf(statement.kind);
  if (kind === undefined) return fail([error("records.kind-unknown", { found: statement.kind })]);
  const read = kind.read(statement.body);
  if (!read.ok) return read;
  const content: EntryContent = {
    format: ENTRY_FORMAT,
    job: position.job,
    device: position.device,
    sequence: (position.last?.sequence ?? 0) + 1,
    previous: position.last?.id ?? null,
    seen: seenSince(position),
    clock,
    author: statement.author,
    kind: kind.id,
    revision: kind.revision,
    body: statement.body,
  };
  const canonical = canonicalEntry(content);
  if (!canonical.ok) return fail([canonical.error]);
  const bytes = utf8(canonical.value);
  if (bytes.length > MAX_ENTRY_BYTES)
    return fail([error("records.entry-too-large", { found: bytes.length, expected: MAX_ENTRY_BYTES })]);
  const id = hexFromBytes(await sha256(bytes));
  const signature = await signer.sign(bytes);
  // read back, so that what is kept is what was hashed: -0 has become 0
  return ok({ ...(JSON.parse(canonical.value) as EntryContent), id, signature });
}
