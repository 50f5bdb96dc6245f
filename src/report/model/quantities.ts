import { coverageFactor, degreesFromRadians, type Language, type VerdictResult, wrapToTurn } from "#core";
import {
  formatAgainstLimit,
  formatBearing,
  formatMeasured,
  formatNumber,
  formatProbability,
  formatRatioOneIn,
  formatUncertainty,
  MISSING,
  type UnitSystem,
} from "#text";
import type { Cell } from "./report-model.ts";

const METRES_PER_FOOT = 0.3048;
/** Expanded uncertainty that holds 95 % of a value that spreads normally. */
const COVERAGE_95 = coverageFactor(0.95, 1);

interface Length {
  readonly unit: string;
  readonly factor: number;
  readonly decimals: number;
}

/** How lengths are written in tables whose heads name the unit. */
const LENGTHS: Readonly<Record<UnitSystem, Readonly<Record<"offset" | "place" | "depth", Length>>>> = {
  si: {
    offset: { unit: "mm", factor: 1000, decimals: 0 },
    place: { unit: "m", factor: 1, decimals: 3 },
    depth: { unit: "m", factor: 1, decimals: 2 },
  },
  us: {
    offset: { unit: "in", factor: 12 / METRES_PER_FOOT, decimals: 2 },
    place: { unit: "ft", factor: 1 / METRES_PER_FOOT, decimals: 2 },
    depth: { unit: "ft", factor: 1 / METRES_PER_FOOT, decimals: 1 },
  },
};

/** Writes every number of a report: in one language, in one system of units, always beside the number itself. */
export interface Quantities {
  readonly language: Language;
  readonly system: UnitSystem;
  readonly offsetUnit: string;
  readonly placeUnit: string;
  readonly depthUnit: string;
  /** lengths for tables whose heads name the unit */
  offset(metres: number): Cell;
  place(metres: number): Cell;
  level(downM: number): Cell;
  depth(metres: number): Cell;
  bearing(radians: number): Cell;
  degrees(degrees: number, decimals?: number): Cell;
  count(value: number): Cell;
  probability(value: number | undefined): Cell;
  /** a ratio both ways people write it: "4.1 mm/m (1 in 244)" */
  ratio(value: number): string;
  /** a length with its unit, for sentences */
  placeText(metres: number): string;
  levelText(downM: number): string;
  /** value and limit, told apart where rounding alike would hide why it failed */
  against(verdict: Pick<VerdictResult, "value" | "limit" | "unit">): {
    readonly value: Cell;
    readonly limit: Cell;
  };
  /** half width that holds 95 %, from a standard uncertainty */
  expanded(standard: number | undefined, unit: string): Cell;
}

const cell = (text: string, value: number | undefined): Cell =>
  value !== undefined && Number.isFinite(value) ? { text, value } : { text };

/** @returns the way to write numbers in this language and these units. */
export function quantities(language: Language, system: UnitSystem): Quantities {
  const lengths = LENGTHS[system];
  const write = (metres: number, { factor, decimals }: Length, signed = false) =>
    formatNumber(metres * factor, decimals, language, { signed });
  const withUnit = (text: string, { unit }: Length) => (text === MISSING ? text : `${text} ${unit}`);
  return {
    language,
    system,
    offsetUnit: lengths.offset.unit,
    placeUnit: lengths.place.unit,
    depthUnit: lengths.depth.unit,
    offset: (metres) => cell(write(metres, lengths.offset), metres),
    place: (metres) => cell(write(metres, lengths.place), metres),
    level: (downM) => cell(write(-downM, lengths.place, true), -downM),
    depth: (metres) => cell(write(metres, lengths.depth), metres),
    bearing: (radians) =>
      cell(
        Number.isFinite(radians) ? formatBearing(degreesFromRadians(wrapToTurn(radians)), language) : MISSING,
        radians,
      ),
    degrees: (degrees, decimals = 2) => cell(formatNumber(degrees, decimals, language), degrees),
    count: (value) => cell(formatNumber(value, 0, language), value),
    probability: (value) =>
      value === undefined ? { text: MISSING } : cell(formatProbability(value, language), value),
    ratio: (value) =>
      Number.isFinite(value)
        ? `${formatMeasured(value, "m/m", language, system)} (${formatRatioOneIn(value, language)})`
        : MISSING,
    placeText: (metres) => withUnit(write(metres, lengths.place), lengths.place),
    levelText: (downM) => withUnit(write(-downM, lengths.place, true), lengths.place),
    against: ({ value, limit, unit }) => {
      const written = formatAgainstLimit(value, limit, unit, language, system);
      return { value: cell(written.value, value), limit: cell(written.limit, limit) };
    },
    expanded: (standard, unit) =>
      standard === undefined
        ? { text: MISSING }
        : cell(formatUncertainty(COVERAGE_95 * standard, unit, language, system), COVERAGE_95 * standard),
  };
}
