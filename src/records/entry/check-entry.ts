import { fail, type Issue, ok, type Result } from "#core";
import { sha256, utf8 } from "../crypto/hash.ts";
import { hexFromBytes } from "../crypto/hex.ts";
import type { Verifier } from "../crypto/keys.ts";
import { error } from "../issue.ts";
import { canonicalEntry } from "./canonical-entry.ts";
import { type Entry, FIRST_KIND, MAX_ENTRY_BYTES } from "./entry.ts";
import { entrySchema } from "./entry-schema.ts";

/**
 * Checks one entry from outside by itself: shape, size, hash, signature. Needs nothing but the entry, because the
 * device is named by its public key. What the body says is not looked at: an entry of a kind that is not known is sound.
 *
 * @param raw what was read from a message or a file.
 * @returns the entry as it came, every unknown field in place.
 *
 * Errors: records.entry-shape, records.entry-chain-start, records.entry-too-large, records.id-mismatch,
 *   records.signature-wrong, and those of canonicalJson.
 */
export async function checkEntry(raw: unknown, verifier: Verifier): Promise<Result<Entry, Issue>> {
  const shaped = entryOfShape(raw);
  if (!shaped.ok) return shaped;
  const entry = shaped.value;
  const canonical = canonicalEntry(entry);
  if (!canonical.ok) return canonical;
  const bytes = utf8(canonical.value);
  if (bytes.length > MAX_ENTRY_BYTES)
    return fail(error("records.entry-too-large", { found: bytes.length, expected: MAX_ENTRY_BYTES }));
  if (hexFromBytes(await sha256(bytes)) !== entry.id) return fail(error("records.id-mismatch", named(entry)));
  if (!(await verifier.verify(entry.device, bytes, entry.signature)))
    return fail(error("records.signature-wrong", named(entry)));
  return ok(entry);
}

/** Only the shape. The entry is handed on as it came, so that unknown fields stay where they are. */
function entryOfShape(raw: unknown): Result<Entry, Issue> {
  const shaped = entrySchema.safeParse(raw);
  if (!shaped.success) {
    const [first] = shaped.error.issues;
    const field = first?.path.join(".") ?? "";
    return fail(error("records.entry-shape", { field, found: first?.message ?? "" }, field));
  }
  const entry = raw as Entry;
  const isFirst = entry.sequence === 1;
  if (isFirst !== (entry.previous === null) || (isFirst && entry.kind !== FIRST_KIND))
    return fail(error("records.entry-chain-start", named(entry)));
  return ok(entry);
}

const named = (entry: Entry) => ({ entry: entry.id, device: entry.device, sequence: entry.sequence });
