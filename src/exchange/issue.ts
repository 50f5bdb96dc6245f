import type { Issue, Place, Severity } from "#core";

const issue =
  (severity: Severity) =>
  (code: string, place: Place = {}, values: Issue["values"] = {}): Issue => ({
    code,
    severity,
    place,
    values,
  });

/** Something that keeps a folder from being taken over, or a job from being written. */
export const error = issue("error");
/** Something that people should look at; the work was done all the same. */
export const warning = issue("warning");
/** For information. */
export const note = issue("note");
