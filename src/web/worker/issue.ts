import type { Issue } from "#core";

/** A finding of the desk. */
export const error = (code: string, values: Issue["values"] = {}): Issue => ({
  code,
  severity: "error",
  place: {},
  values,
});
