import type { Issue } from "#core";

/** A finding of this layer that must be mended. */
export const error = (code: string, values: Issue["values"] = {}, field?: string): Issue => ({
  code,
  severity: "error",
  place: field === undefined ? {} : { field },
  values,
});

/** A finding of this layer that is odd but does no harm to the record. */
export const warning = (code: string, values: Issue["values"] = {}): Issue => ({
  code,
  severity: "warning",
  place: {},
  values,
});
