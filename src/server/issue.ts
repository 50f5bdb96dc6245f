import type { Issue } from "#core";

/** A finding of this layer. @param field of the request that it is about. */
export const error = (code: string, values: Issue["values"] = {}, field?: string): Issue => ({
  code,
  severity: "error",
  place: field === undefined ? {} : { field },
  values,
});
