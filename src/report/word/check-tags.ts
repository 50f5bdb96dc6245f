import type { Tag } from "easy-template-x";
import type { Issue } from "#core";
import { KNOWN_TAGS } from "./tags.ts";

/**
 * Tags of a template that nothing stands for. The engine would leave each of them empty without a word, so they are listed first.
 *
 * Errors: report.template-tag-unknown.
 */
export function unknownTags(tags: readonly Pick<Tag, "name">[], file: string): readonly Issue[] {
  const unknown = new Set(tags.map(({ name }) => name).filter((name) => !KNOWN_TAGS.has(name)));
  return [...unknown].map((name) => ({
    code: "report.template-tag-unknown",
    severity: "error",
    place: { file },
    values: { found: name, hint: hint(name) },
  }));
}

/** A tag that differs by capitals or signs between words only. */
function hint(name: string): string {
  const plain = (text: string) => text.toLowerCase().replaceAll(/[^a-z0-9]/g, "");
  const near = [...KNOWN_TAGS].find((known) => plain(known) === plain(name));
  return near === undefined ? "" : ` (${near}?)`;
}
