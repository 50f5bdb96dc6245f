import type { Issue, Place, Severity } from "#core";

/** A finding of this layer. The caller knows the place; here it is passed through. */
export function geodesyIssue(
  code: string,
  values: Issue["values"] = {},
  place: Place = {},
  severity: Severity = "error",
): Issue {
  return { code, severity, place, values };
}
