import { contract, type Language } from "#core";
import { formatNumber, MISSING } from "./format-number.ts";

interface ShownUnit {
  readonly decimals: number;
  /** what stands behind the number, with the space that belongs before it */
  readonly suffix: Readonly<Record<Language, string>>;
}

const everywhere = (suffix: string): ShownUnit["suffix"] => ({ en: suffix, de: suffix });

/** Units that people read, each with the decimals that a survey can stand behind. */
const UNITS = {
  m: { decimals: 3, suffix: everywhere(" m") },
  mm: { decimals: 0, suffix: everywhere(" mm") },
  "mm/m": { decimals: 1, suffix: everywhere(" mm/m") },
  "m/m": { decimals: 4, suffix: everywhere(" m/m") },
  ft: { decimals: 2, suffix: everywhere(" ft") },
  in: { decimals: 2, suffix: everywhere(" in") },
  "in/ft": { decimals: 3, suffix: everywhere(" in/ft") },
  "%": { decimals: 2, suffix: everywhere(" %") },
  deg: { decimals: 2, suffix: everywhere("°") },
  "1/m": { decimals: 4, suffix: everywhere(" 1/m") },
  "deg/h": { decimals: 2, suffix: everywhere("°/h") },
  "deg/sqrt(h)": { decimals: 2, suffix: everywhere("°/√h") },
  "deg/h/sqrt(h)": { decimals: 2, suffix: everywhere("°/h/√h") },
  s: { decimals: 0, suffix: everywhere(" s") },
  kN: { decimals: 0, suffix: everywhere(" kN") },
  "°C": { decimals: 1, suffix: everywhere(" °C") },
  "1": { decimals: 0, suffix: everywhere("") },
} as const satisfies Record<string, ShownUnit>;

export type DisplayUnit = keyof typeof UNITS;

export const isDisplayUnit = (unit: string): unit is DisplayUnit => Object.hasOwn(UNITS, unit);

/** How many decimals a unit is shown with. */
export const decimalsOf = (unit: DisplayUnit): number => UNITS[unit].decimals;

/**
 * A value with its unit, for people: "12 mm", "4.500 m", "0.38°"; a missing value is a dash.
 *
 * @param value in the unit named; nothing is converted here.
 * @param options decimals: other than usual for the unit; signed: write a plus before positive values.
 */
export function formatQuantity(
  value: number,
  unit: DisplayUnit,
  language: Language,
  options: { readonly decimals?: number; readonly signed?: boolean } = {},
): string {
  if (!Number.isFinite(value)) return MISSING;
  const { decimals, suffix } = UNITS[unit];
  return formatNumber(value, options.decimals ?? decimals, language, options) + suffix[language];
}

/** A value to two significant digits, for quantities that range over powers of ten: "0.020°", "0.0050". */
export function formatTwoDigits(value: number, unit: DisplayUnit, language: Language): string {
  const power = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Number.isFinite(power) ? Math.min(MOST_DECIMALS, Math.max(0, 1 - power)) : 0;
  return formatQuantity(value, unit, language, { decimals });
}
const MOST_DECIMALS = 9;

/** From here on an offset is a blunder or a design of its own, and metres are easier to read, metres. */
const LARGEST_IN_MM = 10;

/** An offset, allowance or other length that people read in millimetres; above 10 m in metres. */
export const formatOffset = (metres: number, language: Language): string =>
  Math.abs(metres) < LARGEST_IN_MM
    ? formatQuantity(metres * 1000, "mm", language)
    : formatQuantity(metres, "m", language);

/** A level in metres, positive up, always with its sign: "+4.500 m". */
export const formatLevel = (levelM: number, language: Language): string =>
  formatQuantity(levelM, "m", language, { signed: true });

/** A depth in metres, positive down. */
export const formatDepth = (depthM: number, language: Language): string =>
  formatQuantity(depthM, "m", language, { decimals: 2 });

/** A bearing with three digits before the decimal mark: "045.0°". Degrees clockwise from north, [0, 360). */
export function formatBearing(degrees: number, language: Language): string {
  if (!Number.isFinite(degrees)) return MISSING;
  contract(degrees >= 0 && degrees < 360, `formatBearing: ${degrees} is not a bearing`);
  // 359.96 would round to 360.0, which is not a bearing
  const rounded = Math.round(degrees * 10) / 10 === 360 ? 0 : degrees;
  return `${formatNumber(rounded, 1, language).padStart(5, "0")}°`;
}
