import type { Issue, Result } from "#core";
import { canonicalJson } from "../json/canonical-json.ts";
import type { EntryContent } from "./entry.ts";

/**
 * The text that is hashed and signed: the canonical form of the entry without its id and its signature. Fields that
 * this version does not know are part of it.
 *
 * Errors: as canonicalJson.
 */
export function canonicalEntry(entry: EntryContent): Result<string, Issue> {
  const content: Record<string, unknown> = { ...entry };
  delete content["id"];
  delete content["signature"];
  return canonicalJson(content);
}
