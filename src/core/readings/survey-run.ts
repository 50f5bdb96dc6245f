import type { NorthEastDown } from "../geometry/vector.ts";
import type { DeclaredError } from "./declared-error.ts";

/** What the columns of a readings file mean. */
export type Measures = "tilt-turn" | "acceleration-turn" | "inclination-azimuth" | "keyed-tilt";
export const MEASURES: readonly Measures[] = [
  "tilt-turn",
  "acceleration-turn",
  "inclination-azimuth",
  "keyed-tilt",
];

/** "": the file does not say. open and close: rows at the top where a heading is known; tie: the same in between. */
export type Leg = "" | "open" | "down" | "tie" | "up" | "close";
export const LEGS: readonly Leg[] = ["", "open", "down", "tie", "up", "close"];

/**
 * Readings of one run, in the order of the file. Struct of arrays, all of length `count`; NaN = not recorded.
 * Angles in radians, lengths in metres. Nothing is corrected here.
 */
export interface Readings {
  readonly count: number;
  /** seconds from the first time of the run */
  readonly timeS: Float64Array;
  /** depth along the hole below the tube's reference top as the file gives it; NaN where counts are given instead */
  readonly depthM: Float64Array;
  readonly depthCounts: Float64Array;
  /** lean of the down-hole axis towards probe +x and +y, as angles */
  readonly tiltXRad: Float64Array;
  readonly tiltYRad: Float64Array;
  /** gyro angle about the probe axis, accumulated, positive clockwise looking down the hole */
  readonly turnRad: Float64Array;
  /** what the sensor shows at rest (the reaction to gravity), any one unit, z along the hole downwards */
  readonly accX: Float64Array;
  readonly accY: Float64Array;
  readonly accZ: Float64Array;
  readonly inclinationRad: Float64Array;
  readonly azimuthRad: Float64Array;
  readonly leg: readonly Leg[];
  /** 1 or 2; 0 = the file does not say */
  readonly face: Uint8Array;
  readonly temperatureC: Float64Array;
  readonly samples: Float64Array;
  readonly seTiltXRad: Float64Array;
  readonly seTiltYRad: Float64Array;
  /** line of the file each row stands in, from 1 */
  readonly line: Int32Array;
}

/** A heading known at a moment of the run, already turned to grid north, with what was applied to get there. */
export interface HeadingReference {
  /** azimuth of probe +x, radians clockwise from grid north */
  readonly headingRad: number;
  readonly standardUncertaintyRad: number;
  readonly givenNorth: "grid" | "true" | "magnetic";
  /** heading as it was given, from the north named above */
  readonly givenHeadingRad: number;
  readonly declinationRad: number;
  readonly declinationUncertaintyRad: number;
  readonly convergenceRad: number;
}

export type ClosureModel = "linear-time" | "linear-turn" | "least-squares" | "none";
export const CLOSURE_MODELS: readonly ClosureModel[] = [
  "linear-time",
  "linear-turn",
  "least-squares",
  "none",
];

/** One run as the job describes it, with its readings. Everything in core units, references from grid north. */
export interface SurveyRun {
  readonly id: string;
  readonly elementId: string;
  readonly tubeId: string | undefined;
  readonly instrumentId: string;
  readonly measures: Measures;
  readonly calibrationIds: readonly string[];
  /** tilts already corrected for their zero by the instrument */
  readonly zeroed: boolean;
  readonly operator: string | undefined;
  /** ISO 8601 time of the first reading, if the file has times */
  readonly startedAt: string | undefined;
  readonly opening: HeadingReference | undefined;
  readonly closing: HeadingReference | undefined;
  /** in the order of the rows with leg "tie" */
  readonly ties: readonly HeadingReference[];
  readonly closureModel: ClosureModel;
  /** limit of the misclosure, radians; undefined = from the references and the instrument class */
  readonly closureLimitRad: number | undefined;
  /** inclination-azimuth runs: what was added to the azimuths to reach grid north */
  readonly azimuthNorth: HeadingReference["givenNorth"] | undefined;
  readonly azimuthToGridRad: number;
  /** standard uncertainty of the azimuths as a whole, without that of the declination, radians */
  readonly azimuthUncertaintyRad: number;
  /** of the declination in `azimuthToGridRad`, radians; all runs of the job share its error */
  readonly azimuthDeclinationUncertaintyRad: number;
  /** keyed runs: grid bearing of +x on face 1 at the top */
  readonly grooveBearingRad: number | undefined;
  /** keyed runs: twist of the groove by depth, positive clockwise looking down */
  readonly spiral: readonly { readonly depthM: number; readonly twistRad: number }[];
  /** start of a run in the element's own bore, where it differs from the design head */
  readonly start: (NorthEastDown & { readonly standardUncertaintyM: number | undefined }) | undefined;
  /** added to every depth, metres: reading of the depth device when the probe is at the reference top, sign reversed */
  readonly depthZeroM: number;
  /** largest depth between stations that counts as read through, metres; undefined = twice the usual interval */
  readonly stationLimitM: number | undefined;
  /** values of the budget that the job gives for this run, in place of the usual ones */
  readonly declaredErrors: readonly DeclaredError[];
  readonly readings: Readings;
  /** readings file, relative to the job folder */
  readonly file: string;
  /** place of the run in job.json, e.g. "runs[3]" */
  readonly field: string;
}
