import type { Leg, Measures, NorthEastDown } from "#core";
import type { HoleShape } from "./hole-shape.ts";
import type { ProbeErrors } from "./probe-errors.ts";

/** Where the run takes place: what turns true and magnetic bearings into grid bearings. */
export interface SimulatedSite {
  readonly latitudeDeg: number;
  /** grid bearing = true bearing - convergence */
  readonly convergenceDeg: number;
  /** true bearing = magnetic bearing + declination, as the job states it */
  readonly declinationDeg: number;
  readonly declinationUncertaintyDeg?: number;
  /** declination that holds on the site less the stated one */
  readonly declinationErrorDeg?: number;
}

/** A heading of probe +x that is known at the top. */
export interface ReferenceSpec {
  /** as it is written down, from the north named beside it */
  readonly headingDeg: number;
  readonly north: "grid" | "true" | "magnetic";
  readonly standardUncertaintyDeg: number;
  /** written heading less the true one; not given = by chance with the standard uncertainty */
  readonly errorDeg?: number;
}

/** One way of the probe through the hole with readings at stations. */
export interface PassSpec {
  readonly leg: Extract<Leg, "down" | "up">;
  readonly face: 1 | 2;
}

/** Something that goes wrong in a run. */
export type RunFault =
  /** stations between the two depths are not read */
  | { readonly fault: "gap"; readonly fromM: number; readonly toM: number }
  /** the gyro loses count by this much when it passes the depth on the first pass */
  | { readonly fault: "gyro-jump"; readonly atM: number; readonly jumpDeg: number }
  /** face 1 is written down as 2 and the other way round */
  | { readonly fault: "swapped-faces" };

/** Smallest step of each column of the record; 0 or not given = all digits. */
export interface RecordResolution {
  readonly tiltDeg?: number;
  readonly turnDeg?: number;
  readonly depthM?: number;
  readonly acceleration?: number;
}

/** Everything about one simulated run, as plain data. Angles in degrees, as in a scenario file. */
export interface RunSpec {
  readonly id: string;
  readonly elementId: string;
  readonly tubeId?: string;
  readonly instrumentId: string;
  readonly measures: Measures;
  readonly hole: HoleShape;
  /** position of the axis at depth 0 */
  readonly head: NorthEastDown;
  readonly site: SimulatedSite;
  /** nominal depths along the hole, metres, increasing */
  readonly stationsM: readonly number[];
  /** not given: one pass down on face 1 */
  readonly passes?: readonly PassSpec[];
  /** not given: grid heading 0 without error for runs with a gyro */
  readonly opening?: ReferenceSpec;
  /** not given: the run has no closing row */
  readonly closing?: ReferenceSpec;
  /** heading known again at the top between passes: one for each space between two passes, or none */
  readonly ties?: readonly ReferenceSpec[];
  readonly errors?: Partial<ProbeErrors>;
  /** distance over which the probe touches the tube, metres */
  readonly gaugeLengthM?: number;
  readonly faults?: readonly RunFault[];
  /** turn about the axis: steady part and a wave of chance; not given: drawn from the seed */
  readonly spin?: { readonly turnsPerM: number; readonly waveTurns: number };
  /** keyed runs: stated grid bearing of +x on face 1 at the top, and the twist of the groove by depth */
  readonly grooveBearingDeg?: number;
  readonly spiral?: readonly { readonly depthM: number; readonly twistDeg: number }[];
  /** north of the azimuths of an inclination-azimuth run; not given: grid */
  readonly azimuthNorth?: "grid" | "true" | "magnetic";
  /** depth is recorded in counts of the device instead of metres */
  readonly countsPerM?: number;
  readonly calibrationIds?: readonly string[];
  readonly zeroed?: boolean;
  readonly operator?: string;
  /** ISO 8601, in UTC */
  readonly startedAt?: string;
  readonly resolution?: RecordResolution;
  /** readings averaged for one row: fills the columns for samples and standard errors */
  readonly samplesPerRow?: number;
  readonly temperature?: { readonly surfaceC: number; readonly groundC: number };
  /** metres a second; 0.3 where not given */
  readonly hoistSpeedMPerS?: number;
  /** seconds at each station; 10 where not given */
  readonly stopS?: number;
  /** longest step of the integration of the motion, metres; 0.025 where not given */
  readonly stepM?: number;
}
