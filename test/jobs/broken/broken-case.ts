import type { Severity } from "#core";
import type { JobFiles } from "./sound-job.ts";

/** A sound job, broken on purpose, and the finding that must come of it. */
export interface BrokenCase {
  readonly name: string;
  readonly broken: (files: JobFiles) => void;
  readonly code: string;
  readonly file: string;
  readonly line?: number;
  readonly field?: string;
  /** default: error */
  readonly severity?: Severity;
  /** ids of the runs that cannot be worked out any more; default: none */
  readonly lost?: readonly string[] | "job";
}
