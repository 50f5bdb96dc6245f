import type { Measures } from "#core";
import type { HoleShape } from "./hole-shape.ts";
import type { ProbeErrors } from "./probe-errors.ts";
import type { PassSpec, RecordResolution, ReferenceSpec, RunFault, RunSpec } from "./run-spec.ts";

/** A site with everything on it that is known only to the simulator: plain data, as in a scenario file. */
export interface Scenario {
  readonly name: string;
  /** said in job.json: what the job is and that it is invented */
  readonly remark: string;
  readonly place: ScenarioPlace;
  /** entries of job.json, as they stand there */
  readonly criteria?: readonly Readonly<Record<string, unknown>>[];
  readonly decision?: Readonly<Record<string, unknown>>;
  readonly instruments: readonly ScenarioInstrument[];
  readonly calibrations: readonly ScenarioCalibration[];
  readonly elements: readonly ScenarioElement[];
  readonly tubes?: readonly ScenarioTube[];
  readonly runs: readonly ScenarioRun[];
}

export interface ScenarioPlace {
  /** "EPSG:n" or "local" */
  readonly crs: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg?: number;
  readonly levelDatum?: string;
  /** not given: from the projection; 0 on a local grid */
  readonly convergenceDeg?: number;
  /** not given: from the magnetic model at the date of the run; 0 on a local grid without longitude */
  readonly declinationDeg?: number;
  /** declination that really holds on the site less the stated one */
  readonly declinationErrorDeg?: number;
}

export interface ScenarioInstrument {
  readonly id: string;
  readonly serial?: string;
  readonly gaugeLengthM?: number;
  readonly outerDiameterMm?: number;
  readonly lengthM?: number;
  readonly budget?: string;
  readonly errors: Partial<ProbeErrors>;
  readonly resolution?: RecordResolution;
  /** the depth device records counts, this many a metre */
  readonly countsPerM?: number;
  readonly samplesPerRow?: number;
}

/** A calibration to be made: the simulator reads the faulty probe on the bench. */
export interface ScenarioCalibration {
  readonly id: string;
  readonly instrument: string;
  readonly kind: "tilt-zero" | "accelerometer" | "gyro-zero" | "gyro-scale" | "depth-scale";
  /** ISO 8601 */
  readonly madeAt: string;
  readonly validUntil?: string;
  readonly maxRuns?: number;
}

export interface ScenarioElement {
  readonly id: string;
  readonly kind: string;
  readonly diameterM?: number;
  readonly lengthM?: number;
  readonly widthM?: number;
  readonly orientationDeg?: number;
  readonly eastingM: number;
  readonly northingM: number;
  readonly headLevelM: number;
  readonly cutoffLevelM?: number;
  readonly toeLevelM?: number;
  readonly rakeDeg?: number;
  readonly rakeBearingDeg?: number;
  readonly group?: string;
  readonly sequence?: number;
  readonly role?: string;
  readonly loadKn?: number;
  /** as built: where the axis starts against the schedule, and how it runs */
  readonly builtOffsetEastM: number;
  readonly builtOffsetNorthM: number;
  readonly hole: HoleShape;
}

/** A tube of an element, parallel to its axis. */
export interface ScenarioTube {
  readonly element: string;
  readonly tube: string;
  /** from the as-built axis of the element */
  readonly offsetEastM: number;
  readonly offsetNorthM: number;
  readonly topLevelM: number;
  readonly innerDiameterMm?: number;
  readonly lengthM?: number;
}

export interface ScenarioRun {
  readonly id: string;
  readonly element: string;
  readonly tube?: string;
  readonly instrument: string;
  readonly measures: Measures;
  readonly calibrations?: readonly string[];
  readonly operator?: string;
  /** ISO 8601 */
  readonly startedAt: string;
  /** stations every so many metres from `fromM` (0) to `toM` (the toe), which is a station of its own */
  readonly intervalM: number;
  readonly fromM?: number;
  readonly toM?: number;
  readonly passes?: readonly PassSpec[];
  readonly opening?: ReferenceSpec;
  readonly closing?: ReferenceSpec;
  readonly ties?: readonly ReferenceSpec[];
  readonly faults?: readonly RunFault[];
  readonly spin?: NonNullable<RunSpec["spin"]>;
  readonly grooveBearingDeg?: number;
  readonly spiral?: NonNullable<RunSpec["spiral"]>;
  readonly azimuthNorth?: "grid" | "true" | "magnetic";
  readonly temperature?: NonNullable<RunSpec["temperature"]>;
  readonly zeroed?: boolean;
  /** standard uncertainty of the surveyed start of a run in the element's own bore, metres */
  readonly startUncertaintyM?: number;
  /** longest step of the integration of the motion, metres */
  readonly stepM?: number;
}
