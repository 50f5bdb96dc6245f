import { LEGS, type Measures } from "#core";
import type { Column } from "../table/column.ts";

export const READINGS_COLUMNS: readonly Column[] = [
  { name: "time", kind: "time" },
  { name: "time_s", kind: "number", min: -1e10, max: 1e10, anyNumber: true },
  { name: "depth_m", kind: "length", min: -100, max: 15_000 },
  { name: "count", kind: "number", min: -1e12, max: 1e12, anyNumber: true },
  { name: "tilt_x_deg", kind: "angle", min: -90, max: 90 },
  { name: "tilt_y_deg", kind: "angle", min: -90, max: 90 },
  { name: "turn_deg", kind: "angle", min: -1e6, max: 1e6 },
  { name: "acc_x", kind: "number", min: -1e12, max: 1e12, anyNumber: true },
  { name: "acc_y", kind: "number", min: -1e12, max: 1e12, anyNumber: true },
  { name: "acc_z", kind: "number", min: -1e12, max: 1e12, anyNumber: true },
  { name: "inclination_deg", kind: "angle", min: 0, max: 180 },
  { name: "azimuth_deg", kind: "azimuth", min: -360, max: 360 },
  { name: "leg", kind: "word", words: LEGS.filter((leg) => leg !== "") },
  { name: "face", kind: "number", anyNumber: true },
  { name: "temperature_c", kind: "number", min: -60, max: 150 },
  { name: "samples", kind: "number", min: 1, max: 1e9, anyNumber: true },
  { name: "se_tilt_x_deg", kind: "angle", min: 0, max: 90 },
  { name: "se_tilt_y_deg", kind: "angle", min: 0, max: 90 },
];

/** Columns without which a file of that kind means nothing. "depth" = depth_m, or count where the kind allows it. */
export const NEEDED_COLUMNS: Readonly<Record<Measures, readonly string[]>> = {
  "tilt-turn": ["depth", "tilt_x_deg", "tilt_y_deg", "turn_deg"],
  "acceleration-turn": ["depth", "acc_x", "acc_y", "acc_z", "turn_deg"],
  "inclination-azimuth": ["depth_m", "inclination_deg", "azimuth_deg"],
  "keyed-tilt": ["depth_m", "tilt_x_deg", "tilt_y_deg", "face"],
};

/** Kinds whose heading comes from the turn that a gyro adds up: they need time, and headings at the top. */
export const measuresTurn = (measures: Measures): boolean =>
  measures === "tilt-turn" || measures === "acceleration-turn";
