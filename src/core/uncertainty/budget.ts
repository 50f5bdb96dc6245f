import { RADIANS_PER_DEGREE, SECONDS_PER_HOUR } from "../units/quantity.ts";
import {
  type DistributionShape,
  type SourceId,
  type SourceUnit,
  sourceKind,
  sourceKinds,
} from "./error-source.ts";
import type { InstrumentClass } from "./instrument-class.ts";

/** One line of a budget: a source with its standard value. */
export interface BudgetEntry {
  readonly source: SourceId;
  /** standard value (k = 1), SI and radians; >= 0 */
  readonly value: number;
  readonly distribution: DistributionShape;
  /** where the value comes from: a class, the job, a calibration, evidence of the runs */
  readonly from: string;
  /** degrees of freedom of a value from evidence; infinite for a declared one */
  readonly degreesOfFreedom: number;
}

/** Standard values by source. A source that is missing does not act. */
export type Budget = ReadonlyMap<SourceId, BudgetEntry>;

const SI_FACTOR: Readonly<Record<SourceUnit, number>> = {
  deg: RADIANS_PER_DEGREE,
  m: 1,
  "1": 1,
  "deg/h": RADIANS_PER_DEGREE / SECONDS_PER_HOUR,
  "deg/sqrt(h)": RADIANS_PER_DEGREE / Math.sqrt(SECONDS_PER_HOUR),
};

/** Key of a source in job.json: its id with its unit, e.g. "tilt-noise_deg", "gyro-noise_deg_per_sqrt_h". */
export function budgetKey(id: SourceId): string {
  const unit = sourceKind(id)!.unit;
  const words: Readonly<Record<SourceUnit, string>> = {
    deg: "_deg",
    m: "_m",
    "1": "",
    "deg/h": "_deg_per_h",
    "deg/sqrt(h)": "_deg_per_sqrt_h",
  };
  return `${id}${words[unit]}`;
}

/** Sources by their key in job.json. */
export const budgetKeys: ReadonlyMap<string, SourceId> = new Map(
  sourceKinds.map((each) => [budgetKey(each.id), each.id]),
);

/** A value in the unit of its source, as SI. */
export const sourceValueToSi = (id: SourceId, value: number): number =>
  value * SI_FACTOR[sourceKind(id)!.unit];

/** A value in SI, in the unit of its source. */
export const sourceValueFromSi = (id: SourceId, value: number): number =>
  value / SI_FACTOR[sourceKind(id)!.unit];

/** An entry with the usual distribution of its source. */
export const budgetEntry = (source: SourceId, value: number, from: string): BudgetEntry => ({
  source,
  value,
  distribution: sourceKind(source)!.distribution,
  from,
  degreesOfFreedom: Number.POSITIVE_INFINITY,
});

/** Later entries take the place of earlier ones of the same source. */
export function budgetOf(entries: readonly BudgetEntry[]): Budget {
  return new Map(entries.map((entry) => [entry.source, entry]));
}

/** Where a value comes from that nobody gave: common practice, no source. */
export const USUAL_SITE_WORK = "usual site work";

/**
 * What is usual for a class of instrument and for site work, before anything of the job is known.
 *
 * Frame: none. Source: rule E1; instrument figures by class, docs/sources.md [E11]; site figures common practice, no source.
 */
export function classBudget(instrument: InstrumentClass): readonly BudgetEntry[] {
  const from = `class ${instrument.id}`;
  const { tilt, gyro } = instrument;
  const usual = USUAL_SITE_WORK;
  return [
    budgetEntry("tilt-noise", tilt.noiseRad, from),
    budgetEntry("tilt-zero-x", tilt.zeroRad, from),
    budgetEntry("tilt-zero-y", tilt.zeroRad, from),
    budgetEntry("tilt-scale", tilt.scale, from),
    budgetEntry("cross-axis", tilt.crossAxis, from),
    budgetEntry("misalignment-x", tilt.misalignmentRad, from),
    budgetEntry("misalignment-y", tilt.misalignmentRad, from),
    budgetEntry("inclination-noise", tilt.noiseRad, from),
    budgetEntry("inclination-bias", tilt.zeroRad, from),
    budgetEntry("azimuth-noise", 0.2 * RADIANS_PER_DEGREE, usual),
    budgetEntry("azimuth-bias", 0.5 * RADIANS_PER_DEGREE, usual),
    budgetEntry("gyro-noise", gyro.walk, from),
    budgetEntry("gyro-bias", gyro.biasRadPerS, from),
    budgetEntry("gyro-scale", gyro.scale, from),
    budgetEntry("seating", 0.02 * RADIANS_PER_DEGREE, usual),
    budgetEntry("groove-bearing", 0.5 * RADIANS_PER_DEGREE, usual),
    budgetEntry("depth-reading", 0.01, usual),
    budgetEntry("depth-zero", 0.01, usual),
    budgetEntry("depth-scale", 0.001, usual),
    budgetEntry("head-east", 0.005, usual),
    budgetEntry("head-north", 0.005, usual),
    budgetEntry("head-level", 0.005, usual),
  ];
}
