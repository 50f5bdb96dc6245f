import type { Measures } from "../readings/survey-run.ts";

/** How far one value of a source reaches: every reading its own, one for a run, for a hole, for a calibration, … */
export type Repeat = "stop" | "run" | "hole" | "calibration" | "instrument" | "job" | "element";

export type DistributionShape = "normal" | "rectangular" | "triangular" | "arcsine";
export const DISTRIBUTION_SHAPES: readonly DistributionShape[] = [
  "normal",
  "rectangular",
  "triangular",
  "arcsine",
];

/** Units that a source may be given in, at the edges; inside all is SI and radians. */
export type SourceUnit = "deg" | "m" | "1" | "deg/h" | "deg/sqrt(h)";

/** A kind of error source: what it is, and how it repeats. */
export interface SourceKind {
  readonly id: SourceId;
  readonly unit: SourceUnit;
  readonly repeats: Repeat;
  readonly distribution: DistributionShape;
  /** runs in which it acts */
  readonly measures: readonly Measures[];
  readonly text: Readonly<Record<"en" | "de", string>>;
}

const GYRO: readonly Measures[] = ["tilt-turn", "acceleration-turn"];
const TILT: readonly Measures[] = [...GYRO, "keyed-tilt"];
const ANGLES: readonly Measures[] = ["inclination-azimuth"];
const ALL: readonly Measures[] = [...TILT, ...ANGLES];

const kind = <I extends string>(
  id: I,
  unit: SourceUnit,
  repeats: Repeat,
  measures: readonly Measures[],
  en: string,
  de: string,
  distribution: DistributionShape = "normal",
) => ({ id, unit, repeats, measures, distribution, text: { en, de } });

/**
 * Every source of error that a budget can hold (E1). A new one is a line here and its effect in `survey/run-errors.ts`
 * (a value that acts on readings) or in `random-effects.ts` (chance at every stop).
 */
export const sourceKinds = [
  kind("tilt-noise", "deg", "stop", TILT, "noise of one tilt reading", "Rauschen einer Neigungsablesung"),
  kind(
    "seating",
    "deg",
    "stop",
    TILT,
    "seating of the probe in the tube",
    "Sitz der Sonde im Rohr",
    "rectangular",
  ),
  kind("tilt-zero-x", "deg", "calibration", TILT, "tilt zero, x", "Neigungsnullpunkt, x"),
  kind("tilt-zero-y", "deg", "calibration", TILT, "tilt zero, y", "Neigungsnullpunkt, y"),
  kind("tilt-scale", "1", "instrument", TILT, "tilt scale", "Neigungsmaßstab"),
  kind("cross-axis", "1", "instrument", TILT, "cross axis of the tilts", "Querempfindlichkeit der Neigungen"),
  kind("misalignment-x", "deg", "instrument", TILT, "sensor to housing, x", "Sensor zu Gehäuse, x"),
  kind("misalignment-y", "deg", "instrument", TILT, "sensor to housing, y", "Sensor zu Gehäuse, y"),
  kind("inclination-noise", "deg", "stop", ANGLES, "noise of one inclination", "Rauschen einer Neigung"),
  kind("azimuth-noise", "deg", "stop", ANGLES, "noise of one azimuth", "Rauschen eines Azimuts"),
  kind(
    "inclination-bias",
    "deg",
    "instrument",
    ANGLES,
    "inclination, constant part",
    "Neigung, fester Anteil",
  ),
  kind("azimuth-bias", "deg", "run", ANGLES, "azimuth, constant part", "Azimut, fester Anteil"),
  kind("opening-heading", "deg", "run", GYRO, "opening heading", "Anfangsrichtung"),
  kind("closing-heading", "deg", "run", GYRO, "closing heading", "Schlussrichtung"),
  kind("declination", "deg", "job", [...GYRO, ...ANGLES], "declination", "Missweisung"),
  kind("groove-bearing", "deg", "hole", ["keyed-tilt"], "groove bearing", "Nutrichtung"),
  kind("gyro-noise", "deg/sqrt(h)", "stop", GYRO, "gyro noise", "Kreiselrauschen"),
  kind("gyro-bias", "deg/h", "calibration", GYRO, "gyro zero left over", "Kreiselnullpunkt, Rest"),
  kind("gyro-scale", "1", "instrument", GYRO, "gyro scale", "Kreiselmaßstab"),
  kind("depth-reading", "m", "stop", ALL, "reading of depth", "Tiefenablesung"),
  kind("depth-zero", "m", "run", ALL, "zero of depth", "Tiefennullpunkt"),
  kind("depth-scale", "1", "calibration", ALL, "scale of depth", "Tiefenmaßstab"),
  kind("head-east", "m", "hole", ALL, "head position, east", "Kopflage, Ost"),
  kind("head-north", "m", "hole", ALL, "head position, north", "Kopflage, Nord"),
  kind("head-level", "m", "hole", ALL, "level of the head", "Kopfhöhe"),
  kind("unread-stretch", "m", "stop", ALL, "course between the stops", "Verlauf zwischen den Messpunkten"),
  kind("tube-position", "m", "element", ALL, "place of the tube in the element", "Lage des Rohrs im Bauteil"),
] as const satisfies readonly Omit<SourceKind, "id">[];

export type SourceId = (typeof sourceKinds)[number]["id"];

const byId = new Map<string, SourceKind>(sourceKinds.map((each) => [each.id, each]));

/** The kind of a source; undefined for an unknown id. */
export const sourceKind = (id: string): SourceKind | undefined => byId.get(id);

/** Sources that act through one value on the readings, the references or the top: what a run is worked out again for. */
export const valueSources = sourceKinds
  .filter((each) => each.repeats !== "stop" && each.repeats !== "element")
  .map((each) => each.id);
