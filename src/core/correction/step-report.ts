/** What a named step of the computation changed, and by how much. Units are in the keys. */
export interface StepReport {
  readonly step: string;
  /** raised whenever the same input could give another number */
  readonly revision: number;
  readonly effect: Readonly<Record<string, number | string>>;
}
