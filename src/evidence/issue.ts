import type { Issue, Place, Severity } from "#core";

const issue =
  (severity: Severity) =>
  (code: string, place: Place = {}, values: Issue["values"] = {}): Issue => ({
    code,
    severity,
    place,
    values,
  });

/** Something that does not fit, or is not there. */
export const error = issue("error");
/** Something that people should know and that takes nothing from the record. */
export const warning = issue("warning");
/** What could not be checked, and by what it could be. */
export const note = issue("note");
