import type { Issue } from "#core";

/** A finding of this layer. */
export const error = (code: string, values: Issue["values"] = {}): Issue => ({
  code,
  severity: "error",
  place: {},
  values,
});
