import { type Issue, ok, type Result } from "#core";
import { canonicalJson, type TreeHead } from "#records";
import { KEYS, SEALS } from "./names.ts";
import type { WhatEntriesDo } from "./what-entries-do.ts";

export const KEYS_FORMAT = "toeline-keys/1";

/**
 * Files that repeat, for people and simple tools, what the entries say: the keys with their announcing entries, and the seals.
 * They add nothing; a checker makes them anew and compares.
 *
 * Errors: those of canonicalJson.
 */
export function derivedFiles(
  job: string,
  heads: readonly Pick<TreeHead, "key">[],
  { devices, people, seals }: WhatEntriesDo,
): Result<ReadonlyMap<string, string>, Issue> {
  const office = [...new Set(heads.map(({ key }) => key))].sort();
  const keys = canonicalJson({ format: KEYS_FORMAT, job, office, devices, people });
  if (!keys.ok) return keys;
  const lines: string[] = [];
  for (const { place, entry, seal } of seals) {
    const line = canonicalJson({ place, entry: entry.id, seal });
    if (!line.ok) return line;
    lines.push(`${line.value}\n`);
  }
  return ok(
    new Map([
      [KEYS, `${keys.value}\n`],
      [SEALS, lines.join("")],
    ]),
  );
}
