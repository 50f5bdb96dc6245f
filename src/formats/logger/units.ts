import type { Quantity } from "./roles.ts";

/** Units in which loggers write. */
export const UNIT_IDS = [
  "none",
  "m",
  "cm",
  "mm",
  "ft",
  "in",
  "deg",
  "rad",
  "mrad",
  "gon",
  "arcmin",
  "mm/m",
  "percent",
  "ratio",
  "g",
  "mg",
  "m/s2",
  "counts",
  "c",
  "f",
  "k",
  "s",
  "ms",
  "min",
  "h",
] as const;
export type UnitId = (typeof UNIT_IDS)[number];

/** Units that a quantity may have; the first is the one that the readings file takes. */
export const UNITS_OF: Readonly<Record<Quantity, readonly UnitId[]>> = {
  length: ["m", "cm", "mm", "ft", "in"],
  tilt: ["deg", "rad", "mrad", "gon", "arcmin", "mm/m", "percent", "ratio"],
  angle: ["deg", "rad", "mrad", "gon", "arcmin"],
  acceleration: ["g", "mg", "m/s2", "counts"],
  temperature: ["c", "f", "k"],
  time: ["s", "ms", "min", "h"],
  plain: ["none"],
};

const WORDS: readonly (readonly [UnitId, string])[] = [
  ["m", "m meter metre meters metres mtr mètre mètres metro metros metri"],
  ["cm", "cm"],
  ["mm", "mm"],
  ["ft", "ft feet foot ' pied pieds fuss fuß"],
  ["in", "in inch inches zoll"],
  ["deg", "deg ° degree degrees grad degré degrés grado grados gradi º"],
  ["rad", "rad radian radians"],
  ["mrad", "mrad"],
  ["gon", "gon"],
  ["arcmin", "arcmin ' min '"],
  ["mm/m", "mm/m mm_m mm_per_m mm/metre ‰ mm/meter"],
  ["percent", "% percent pct prozent cm/m"],
  ["ratio", "ratio m/m v/h 1:1 sin"],
  ["g", "g gn"],
  ["mg", "mg"],
  ["m/s2", "m/s2 m/s² m/s^2"],
  ["counts", "counts count cts digits digit dig raw lsb imp impulse"],
  ["c", "°c c degc deg_c celsius ºc"],
  ["f", "°f f degf"],
  ["k", "k kelvin"],
  ["s", "s sec secs second seconds sek sekunden seg"],
  ["ms", "ms msec"],
  ["min", "min mins minutes minuten"],
  ["h", "h hr hrs hours std"],
];

/** Units that a word may mean, in the order above. "min" is a time and an angle: what the column holds decides. */
export function unitsNamed(word: string): readonly UnitId[] {
  const wanted = word.trim().toLowerCase();
  if (wanted === "") return [];
  return WORDS.filter(([, words]) => words.split(" ").includes(wanted)).map(([id]) => id);
}

/** The unit of the quantity that a word means. */
export const unitNamed = (word: string, quantity: Quantity): UnitId | undefined =>
  unitsNamed(word).find((id) => UNITS_OF[quantity].includes(id));

/** How many of a unit make one of the readings file's, exact where it can be: 100 cm a metre. Slopes and temperatures have rules of their own. */
const PER_ONE: Readonly<Partial<Record<UnitId, number>>> = {
  m: 1,
  cm: 100,
  mm: 1000,
  deg: 1,
  arcmin: 60,
  s: 1,
  ms: 1000,
};
const IN_ONE: Readonly<Partial<Record<UnitId, number>>> = {
  // 1 ft = 0.3048 m and 1 in = 0.0254 m by definition
  ft: 0.3048,
  in: 0.0254,
  rad: 180 / Math.PI,
  mrad: 0.18 / Math.PI,
  gon: 0.9,
  min: 60,
  h: 3600,
};
/** Rise of a metre along the probe, or along the plumb line, in one of the unit. */
const PER_SLOPE: Readonly<Partial<Record<UnitId, number>>> = { "mm/m": 1000, percent: 100, ratio: 1 };

export const isSlope = (unit: UnitId): boolean => PER_SLOPE[unit] !== undefined;

/**
 * A number in the unit of the readings file: metres, degrees, degrees Celsius, seconds. Accelerations stay as they are.
 *
 * @param slope what a slope is measured on: sine = along the probe, tangent = along the plumb line.
 * @returns NaN where a sine is over 1.
 */
export function inReadingsUnit(value: number, unit: UnitId, slope: "sine" | "tangent"): number {
  const perSlope = PER_SLOPE[unit];
  if (perSlope !== undefined) {
    const rise = value / perSlope;
    return ((slope === "sine" ? Math.asin(rise) : Math.atan(rise)) * 180) / Math.PI;
  }
  if (unit === "f") return ((value - 32) * 5) / 9;
  if (unit === "k") return value - 273.15;
  const inOne = IN_ONE[unit];
  return inOne === undefined ? value / (PER_ONE[unit] ?? 1) : value * inOne;
}
