import { type DecimalSign, numberInCell } from "./numbers.ts";
import type { Cell } from "./table.ts";

/**
 * Degrees in a cell: a number, or degrees and minutes (and seconds) with a space between, such as `12 30` or `-0 15 20.5`.
 *
 * Marks `°`, `'`, `"` may stand behind the parts. Minutes and seconds are below 60; only the last part may have decimals.
 *
 * @returns degrees, or undefined when the cell is none of these.
 */
export function degreesInCell(cell: Cell, sign: DecimalSign): number | undefined {
  const number = numberInCell(cell, sign);
  if (number !== undefined || typeof cell !== "string") return number;
  const text = cell.trim().replace("−", "-");
  const negative = text.startsWith("-");
  const degrees = sexagesimal(text.replace(/^[+-]/, ""), sign);
  return degrees === undefined || !negative ? degrees : -degrees;
}

/**
 * An azimuth in a cell: degrees as above, or a quadrant bearing such as `N 45 30 E`, `N45.5E`, `S 83 W`, `N` or `E`.
 *
 * Degrees of a quadrant bearing run from north or south towards east or west, 0 to 90.
 *
 * @returns degrees clockwise from the north of the column, or undefined.
 * Source: quadrant bearings as in directional surveys filed with the United States Bureau of Safety and
 *   Environmental Enforcement: N/S, degrees, minutes, E/W.
 */
export function azimuthInCell(cell: Cell, sign: DecimalSign): number | undefined {
  if (typeof cell !== "string") return degreesInCell(cell, sign);
  const text = cell.trim().toUpperCase();
  const cardinal = CARDINALS[text];
  if (cardinal !== undefined) return cardinal;
  const parts = /^([NS])\s*(.+?)\s*([EW])$/.exec(text);
  if (parts === null) return degreesInCell(cell, sign);
  const angle = sexagesimal(parts[2]!, sign);
  if (angle === undefined || angle > 90) return undefined;
  if (parts[1] === "N") return parts[3] === "E" ? angle : (360 - angle) % 360;
  return parts[3] === "E" ? 180 - angle : 180 + angle;
}

const CARDINALS: Readonly<Record<string, number>> = { N: 0, E: 90, S: 180, W: 270 };

/** Unsigned degrees, minutes and seconds, 1 to 3 parts. */
function sexagesimal(text: string, sign: DecimalSign): number | undefined {
  const parts = text
    .replaceAll(/[°º'′"″]/g, " ")
    .trim()
    .split(/\s+/);
  if (parts.length > 3) return undefined;
  let degrees = 0;
  for (const [index, part] of parts.entries()) {
    const isLast = index === parts.length - 1;
    const value = /^[\d.,]+$/.test(part) ? numberInCell(part, sign) : undefined;
    if (value === undefined || (index > 0 && value >= 60)) return undefined;
    if (!isLast && !/^\d+$/.test(part)) return undefined;
    degrees += value / 60 ** index;
  }
  return degrees;
}
