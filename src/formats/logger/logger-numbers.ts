import { type DecimalSign, numberInCell } from "../table/numbers.ts";
import { type Cell, isEmptyCell, type TableRow } from "../table/table.ts";
import { type CellSeparator, type Guess, guess, type Thousands } from "./settings.ts";
import { unitsNamed } from "./units.ts";

/** What is said of the numbers of a file. */
export interface NumberForm {
  readonly decimal: DecimalSign;
  readonly thousands: Thousands;
}

/** Dashes that stand for a minus, also with a blank behind them, and narrow blanks. */
const tidy = (text: string): string =>
  text
    .trim()
    .replace(/^[−–—‐‑]/, "-")
    .replace(/^([+-])\s+/, "$1")
    .replaceAll(/[\u00a0\u202f\u2009]/g, " ");

const GROUPED: Readonly<Record<Exclude<Thousands, "none">, RegExp>> = {
  ",": /^[+-]?\d{1,3}(,\d{3})+(?=\.|$)/,
  ".": /^[+-]?\d{1,3}(\.\d{3})+(?=,|$)/,
  blank: /^[+-]?\d{1,3}( \d{3})+(?=[.,]|$)/,
  "'": /^[+-]?\d{1,3}(['’]\d{3})+(?=[.,]|$)/,
};

/** Text that a unit may be, behind a number: "12.5 m", "0.18°". */
const WITH_UNIT = /^([^\p{L}°%]*\d[.,]?)\s*(\p{L}[\p{L}\d²/^]*|°\s?[CF]?|%)$/u;

/** Number and unit of a cell's text; no unit where what stands behind the number is none that is known. */
function withoutUnit(text: string): { readonly bare: string; readonly unit: string | undefined } {
  const parts = WITH_UNIT.exec(text);
  return parts === null || unitsNamed(parts[2]!).length === 0
    ? { bare: text, unit: undefined }
    : { bare: parts[1]!.trim(), unit: parts[2]! };
}

/** The unit that stands behind the number of a cell; undefined where there is none. */
export const unitBehind = (cell: Cell): string | undefined =>
  typeof cell === "string" ? withoutUnit(tidy(cell)).unit : undefined;

/**
 * The number in a logger's cell, by the signs of the file; undefined where it is none.
 *
 * Minus may be any dash; a unit behind the number is passed over (the column's unit says what it is).
 */
export function loggerNumber(cell: Cell, form: NumberForm): number | undefined {
  if (typeof cell !== "string") return numberInCell(cell, form.decimal);
  const text = tidy(cell);
  const { bare } = withoutUnit(text);
  const { thousands } = form;
  const grouped = thousands === "none" ? null : GROUPED[thousands].exec(bare);
  const plain =
    grouped === null ? bare : grouped[0].replaceAll(/[,.\s'’]/g, "") + bare.slice(grouped[0].length);
  return numberInCell(plain, form.decimal);
}

/** A number whichever way its signs are meant. */
export const mayBeNumber = (cell: Cell): boolean =>
  typeof cell === "number" ||
  loggerNumber(cell, { decimal: ".", thousands: "," }) !== undefined ||
  loggerNumber(cell, { decimal: ",", thousands: "." }) !== undefined ||
  loggerNumber(cell, { decimal: ".", thousands: "blank" }) !== undefined ||
  loggerNumber(cell, { decimal: ",", thousands: "'" }) !== undefined;

interface Seen {
  /** cells that can be read with this decimal sign only; the first of each */
  point: string | undefined;
  comma: string | undefined;
  /** "1,024" and "1.024": either a thousand or one */
  eitherComma: string | undefined;
  eitherPoint: string | undefined;
  blank: string | undefined;
  apostrophe: string | undefined;
  groupedComma: string | undefined;
  groupedPoint: string | undefined;
}

/** Decimal sign and thousands sign of the rows, each with what shows it. */
export function numberFormOf(
  rows: readonly TableRow[],
  separator: CellSeparator,
): { readonly decimal: Guess<DecimalSign>; readonly thousands: Guess<Thousands> } {
  const seen = signsIn(rows);
  const decimal = decimalFrom(seen, separator);
  return { decimal, thousands: thousandsFrom(seen, decimal.value) };
}

function signsIn(rows: readonly TableRow[]): Seen {
  const seen: Seen = {
    point: undefined,
    comma: undefined,
    eitherComma: undefined,
    eitherPoint: undefined,
    blank: undefined,
    apostrophe: undefined,
    groupedComma: undefined,
    groupedPoint: undefined,
  };
  for (const { cells } of rows)
    for (const cell of cells) {
      if (typeof cell !== "string" || isEmptyCell(cell)) continue;
      const { bare } = withoutUnit(tidy(cell));
      if (!/^[+-]?[\d.,]/.test(bare) || /[^\d.,'’ eE+-]/.test(bare)) continue;
      look(bare, seen);
    }
  return seen;
}

function look(text: string, seen: Seen): void {
  if (/^[+-]?\d{1,3}( \d{3})+([.,]\d+)?$/.test(text)) seen.blank ??= text;
  if (/^[+-]?\d{1,3}(['’]\d{3})+([.,]\d+)?$/.test(text)) seen.apostrophe ??= text;
  if (/^[+-]?\d{1,3}(,\d{3}){2,}$|^[+-]?\d{1,3}(,\d{3})+\.\d*$/.test(text)) {
    seen.groupedComma ??= text;
    seen.point ??= text;
  } else if (/^[+-]?\d{1,3}(\.\d{3}){2,}$|^[+-]?\d{1,3}(\.\d{3})+,\d*$/.test(text)) {
    seen.groupedPoint ??= text;
    seen.comma ??= text;
  } else if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(text)) seen.eitherComma ??= text;
  else if (/^[+-]?[1-9]\d{0,2}\.\d{3}$/.test(text)) seen.eitherPoint ??= text;
  else if (/^[+-]?[\d '’]*,\d*([eE][+-]?\d+)?$/.test(text)) seen.comma ??= text;
  else if (/^[+-]?[\d '’]*\.\d*([eE][+-]?\d+)?$/.test(text)) seen.point ??= text;
}

function decimalFrom(seen: Seen, separator: CellSeparator): Guess<DecimalSign> {
  if (seen.comma !== undefined && seen.point === undefined)
    return guess(",", "certain", "logger.why-decimal", { found: seen.comma });
  if (seen.point !== undefined && seen.comma === undefined)
    return guess(".", "certain", "logger.why-decimal", { found: seen.point });
  if (seen.point !== undefined && seen.comma !== undefined)
    return guess(".", "open", "logger.why-decimal-both", { found: seen.point, expected: seen.comma });
  if (seen.eitherComma !== undefined)
    return separator === "," || seen.eitherPoint !== undefined
      ? guess(".", "open", "logger.why-decimal-open", { found: seen.eitherComma })
      : guess(",", "open", "logger.why-decimal-open", { found: seen.eitherComma });
  if (seen.eitherPoint !== undefined)
    return guess(".", "likely", "logger.why-decimal-open", { found: seen.eitherPoint });
  return guess(".", "certain", "logger.why-decimal-none");
}

function thousandsFrom(seen: Seen, decimal: DecimalSign): Guess<Thousands> {
  const shown = (value: Thousands, text: string, sure: "certain" | "open") =>
    guess(value, sure, "logger.why-thousands", { found: text });
  if (seen.blank !== undefined) return shown("blank", seen.blank, "certain");
  if (seen.apostrophe !== undefined) return shown("'", seen.apostrophe, "certain");
  const [grouped, either, sign] =
    decimal === "."
      ? ([seen.groupedComma, seen.eitherComma, ","] as const)
      : ([seen.groupedPoint, seen.eitherPoint, "."] as const);
  if (grouped !== undefined) return shown(sign, grouped, "certain");
  if (either === undefined) return guess("none", "certain", "logger.why-no-thousands");
  return shown(sign, either, seen.point === undefined && seen.comma === undefined ? "open" : "certain");
}
