import type { Cell } from "./table.ts";

export type DecimalSign = "." | ",";

const POINT = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;
const COMMA = /^[+-]?(\d+,\d*|,\d+)([eE][+-]?\d+)?$/;

/** U+2212, the printed minus sign, is unmistakable and read as the keyboard's. */
const plain = (text: string): string => text.trim().replace("−", "-");

/**
 * The number in a cell, or undefined: no hexadecimal, "Infinity", thousands sign or trailing unit is taken for a number.
 *
 * @param sign decimal sign of the file.
 */
export function numberInCell(cell: Cell, sign: DecimalSign): number | undefined {
  if (typeof cell === "number") return Number.isFinite(cell) ? cell : undefined;
  if (typeof cell !== "string") return undefined;
  const text = plain(cell);
  const read = sign === "," && COMMA.test(text) ? text.replace(",", ".") : text;
  if (!POINT.test(read) || (sign === "," && text.includes("."))) return undefined;
  const value = Number(read);
  return Number.isFinite(value) ? value : undefined;
}

export type DecimalUse = "point" | "comma" | "neither";

/** Which decimal sign a cell of a number column shows. */
export function decimalUse(cell: Cell): DecimalUse {
  if (typeof cell !== "string") return "neither";
  const text = plain(cell);
  if (COMMA.test(text)) return "comma";
  return text.includes(".") && POINT.test(text) ? "point" : "neither";
}

/** "1,024": could be a thousand and twenty-four, or a little over one. */
export const mayBeThousands = (cell: Cell): boolean =>
  typeof cell === "string" && /^[+-]?[1-9]\d{0,2},\d{3}$/.test(plain(cell));
