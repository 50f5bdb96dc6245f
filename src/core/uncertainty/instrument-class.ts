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
  scalePpm: number,
): InstrumentClass => ({
  id,
  tilt: { noiseRad: noiseDeg * RADIANS_PER_DEGREE, zeroRad: zeroDeg * RADIANS_PER_DEGREE },
  gyro: {
    walk: walkDegPerRootHour * perRootHour,
    biasRadPerS: biasDegPerHour * perHour,
    scale: scalePpm * 1e-6,
  },
});

/**
 * Classes by their data-sheet figures; the choice within each range is ours.
 *
 * Source: docs/sources.md [E7] (noise density, drift and walk of sensors by class).
 */
export const instrumentClasses: readonly InstrumentClass[] = [
  instrumentClass("mems-low", 0.02, 0.05, 0.5, 15, 2000),
  instrumentClass("mems-standard", 0.01, 0.02, 0.3, 5, 500),
  instrumentClass("mems-high", 0.004, 0.008, 0.1, 1.5, 200),
  instrumentClass("servo", 0.002, 0.004, 0.1, 1.5, 200),
  instrumentClass("fibre-optic", 0.002, 0.004, 0.02, 0.3, 50),
];

export const DEFAULT_INSTRUMENT_CLASS = "mems-standard";

/** Class by its id; undefined for an unknown one. */
export const instrumentClassOf = (id: string): InstrumentClass | undefined =>
  instrumentClasses.find((each) => each.id === id);
