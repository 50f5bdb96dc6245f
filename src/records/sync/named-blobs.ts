import { isHex32 } from "../crypto/hex.ts";
import type { Entry } from "../entry/entry.ts";
import type { JsonValue } from "../json/json-value.ts";

/**
 * Names of the files that an entry speaks of: every field `blob` of its body that holds a SHA-256, at any depth, each once. No kind
 * of entry is asked for by name, so that the files of later kinds travel too.
 */
export function namedBlobs(entry: Pick<Entry, "body">): readonly string[] {
  const named = new Set<string>();
  const visit = (value: JsonValue): void => {
    if (value === null || typeof value !== "object") return;
    if (!Array.isArray(value)) {
      const { blob } = value as { readonly blob?: unknown };
      if (isHex32(blob)) named.add(blob);
    }
    for (const inner of Object.values(value)) visit(inner as JsonValue);
  };
  visit(entry.body);
  return [...named];
}
