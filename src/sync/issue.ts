import type { Issue } from "#core";

/** A finding of this layer that stops what was asked for. Nothing recorded is touched by it. */
export const error = (code: string, values: Issue["values"] = {}): Issue => ({
  code,
  severity: "error",
  place: {},
  values,
});

/** A finding of this layer that people should know of, although the work went on. */
export const warning = (code: string, values: Issue["values"] = {}): Issue => ({
  code,
  severity: "warning",
  place: {},
  values,
});
