/** A standard value of a source of error that the job declares for an instrument or a run, in place of the usual one. */
export interface DeclaredError {
  /** id of the source, see `uncertainty/error-source.ts` */
  readonly source: string;
  /** standard value (k = 1), SI and radians, >= 0 */
  readonly value: number;
  readonly distribution: "normal" | "rectangular" | "triangular" | "arcsine" | undefined;
}
