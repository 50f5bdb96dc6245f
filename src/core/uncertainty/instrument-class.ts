import { RADIANS_PER_DEGREE, SECONDS_PER_HOUR } from "../units/quantity.ts";

const perHour = RADIANS_PER_DEGREE / SECONDS_PER_HOUR;
const perRootHour = RADIANS_PER_DEGREE / Math.sqrt(SECONDS_PER_HOUR);

/** What is usual for a class of instrument, after calibration; a job may override any value. Standard values (k = 1). */
export interface InstrumentClass {
  readonly id: string;
  readonly tilt: {
    /** one averaged reading at a stop, radians */
    readonly noiseRad: number;
    /** zero left after calibration, each axis, radians */
    readonly zeroRad: number;
    /** scale, dimensionless */
    readonly scale: number;
    /** what a lean to the other side adds, dimensionless */
    readonly crossAxis: number;
    /** sensor axes against the housing, each axis, radians */
    readonly misalignmentRad: number;
  };
  readonly gyro: {
    /** angle random walk, rad per square root second */
    readonly walk: number;
    /** rate left after the zero is taken off, rad/s */
    readonly biasRadPerS: number;
    /** scale, dimensionless */
    readonly scale: number;
  };
}

const instrumentClass = (
  id: string,
  noiseDeg: number,
  zeroDeg: number,
  walkDegPerRootHour: number,
  biasDegPerHour: number,
  gyroScale: number,
  tiltScale: number,
): InstrumentClass => ({
  id,
  tilt: {
    noiseRad: noiseDeg * RADIANS_PER_DEGREE,
    zeroRad: zeroDeg * RADIANS_PER_DEGREE,
    scale: tiltScale,
    crossAxis: tiltScale,
    // the zero taken in the housing already holds most of it
    misalignmentRad: (zeroDeg / 2) * RADIANS_PER_DEGREE,
  },
  gyro: { walk: walkDegPerRootHour * perRootHour, biasRadPerS: biasDegPerHour * perHour, scale: gyroScale },
});

/**
 * Classes by their data-sheet figures; the choice within each range is ours.
 *
 * Source: docs/sources.md [E11] (noise density, drift and walk of sensors by class).
 */
export const instrumentClasses: readonly InstrumentClass[] = [
  instrumentClass("mems-low", 0.02, 0.05, 0.5, 15, 2e-3, 5e-3),
  instrumentClass("mems-standard", 0.01, 0.02, 0.3, 5, 5e-4, 2e-3),
  instrumentClass("mems-high", 0.004, 0.008, 0.1, 1.5, 2e-4, 1e-3),
  instrumentClass("servo", 0.002, 0.004, 0.1, 1.5, 2e-4, 5e-4),
  instrumentClass("fibre-optic", 0.002, 0.004, 0.02, 0.3, 5e-5, 5e-4),
];

export const DEFAULT_INSTRUMENT_CLASS = "mems-standard";

/** Class by its id; undefined for an unknown one. */
export const instrumentClassOf = (id: string): InstrumentClass | undefined =>
  instrumentClasses.find((each) => each.id === id);
