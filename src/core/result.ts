/** Where a finding was made: as much of the place as is known. */
export interface Place {
  /** file name relative to the job folder, "/" between folders */
  readonly file?: string;
  /** line in that file, counted from 1; rows of a spreadsheet count as lines */
  readonly line?: number;
  /** column heading, or the path of a field such as `runs[3].opening.heading_deg` */
  readonly field?: string;
}

export type Severity = "error" | "warning" | "note";

/**
 * One thing found in outside data or in a measurement.
 *
 * The code is stable and can be tested; the sentence is made in `text/` from the code and the values.
 * "error": must be mended or explained before results are issued. "warning": odd but usable. "note": for information.
 */
export interface Issue {
  readonly code: string;
  readonly severity: Severity;
  readonly place: Place;
  readonly values: Readonly<Record<string, string | number>>;
}

export type Result<T, E> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const fail = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error });

/** Our own code broke a precondition: a mistake of the program, never of the data. */
export class ContractError extends Error {
  override readonly name = "ContractError";
}

/** @throws ContractError with the message, unless the condition holds. */
export function contract(condition: boolean, message: string): asserts condition {
  if (!condition) throw new ContractError(message);
}
