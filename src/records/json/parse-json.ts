import { fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";

/**
 * Reads JSON text that came from outside.
 *
 * Errors: records.not-json-text.
 */
export function parseJson(text: string): Result<unknown, Issue> {
  const parsed = attempt((): unknown => JSON.parse(text));
  return parsed.ok ? ok(parsed.value) : fail(error("records.not-json-text", { found: parsed.error }));
}
