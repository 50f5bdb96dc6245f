import type { Issue, Place } from "#core";
import { error } from "../issue.ts";

/**
 * Why a log does not fit a head.
 *
 * Errors: records.head-cut, records.head-mismatch.
 */
export const notFitting = (head: { readonly size: number }, entries: number, place: Place): Issue =>
  head.size > entries
    ? error("records.head-cut", place, { found: entries, expected: head.size })
    : error("records.head-mismatch", place, { size: head.size });
