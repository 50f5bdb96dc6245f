import { INK, SIZE } from "./style.ts";
import { line, polygon, tag, text } from "./svg/markup.ts";
import { wrapText } from "./svg/text-width.ts";

/** The column to the right of a drawing that says what its lines and marks are. */
export const KEY_LEFT = 530;
const KEY_RIGHT = 706;
const SYMBOL_MIDDLE = KEY_LEFT + 15;
const TEXT_LEFT = KEY_LEFT + 38;
const LINE_HEIGHT = 13.5;
const ENTRY_GAP = 7.5;

export interface KeyEntry {
  /** draws the symbol centred at x, y; at most 28 wide and 20 high */
  symbol(x: number, y: number): string;
  readonly label: string;
  /** further lines below the label */
  readonly details: readonly string[];
}

/** Entry for a line: a short piece of it. */
export function lineEntry(
  label: string,
  style: Readonly<Record<string, string | number | undefined>>,
  details: readonly string[] = [],
): KeyEntry {
  return { label, details, symbol: (x, y) => line(x - 14, y, x + 14, y, style) };
}

/** Draws the entries from `top` down. */
export function drawKey(
  entries: readonly KeyEntry[],
  top: number,
): { readonly markup: string; readonly bottom: number } {
  let y = top;
  const drawn: string[] = [];
  for (const entry of entries) {
    const room = KEY_RIGHT - TEXT_LEFT;
    const bold = entry.details.length > 0;
    const labels = wrapText(entry.label, SIZE.label, room, bold);
    const details = entry.details.flatMap((detail) => wrapText(detail, SIZE.label, room));
    drawn.push(entry.symbol(SYMBOL_MIDDLE, y + 0.5 * LINE_HEIGHT));
    for (const [i, content] of [...labels, ...details].entries()) {
      const weight = bold && i < labels.length ? { "font-weight": "bold" } : {};
      drawn.push(text(TEXT_LEFT, y + 10 + i * LINE_HEIGHT, content, { "font-size": SIZE.label, ...weight }));
    }
    y += Math.max(1, labels.length + details.length) * LINE_HEIGHT + ENTRY_GAP;
  }
  return { markup: tag("g", { "data-part": "key" }, ...drawn), bottom: y };
}

/** Sentences across the column, below the entries. */
export function drawNotes(
  notes: readonly string[],
  top: number,
): { readonly markup: string; readonly bottom: number } {
  const lines = notes.flatMap((note) => wrapText(note, SIZE.label, KEY_RIGHT - KEY_LEFT));
  const drawn = lines.map((content, i) =>
    text(KEY_LEFT, top + 10 + i * LINE_HEIGHT, content, { "font-size": SIZE.label }),
  );
  return { markup: drawn.join(""), bottom: top + lines.length * LINE_HEIGHT + ENTRY_GAP };
}

/** North arrow, its foot at x, y; one half solid, so that it reads in one ink. */
export function northArrow(x: number, y: number, height: number): string {
  const half = height * 0.17;
  const top = y - height;
  const style = { stroke: INK, "stroke-width": 1, "stroke-linejoin": "round" };
  return tag(
    "g",
    { "data-part": "north" },
    polygon(
      [
        [x, top],
        [x - half, y],
        [x, y - 0.24 * height],
      ],
      { fill: INK, ...style },
    ),
    polygon(
      [
        [x, top],
        [x + half, y],
        [x, y - 0.24 * height],
      ],
      { fill: "#FFFFFF", ...style },
    ),
  );
}
