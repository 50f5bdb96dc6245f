import { HALO, SIZE } from "./style.ts";
import { text } from "./svg/markup.ts";
import { textWidth } from "./svg/text-width.ts";

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Label {
  readonly x: number;
  readonly y: number;
  /** how far from x, y the text keeps */
  readonly clear: number;
  readonly text: string;
}

const HEIGHT = SIZE.label;
const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
const inside = (a: Box, b: Box): boolean =>
  a.left >= b.left && a.right <= b.right && a.top >= b.top && a.bottom <= b.bottom;

function candidates({ x, y, clear, text: content }: Label): Box[] {
  const width = textWidth(content, SIZE.label);
  const box = (left: number, top: number): Box => ({ left, top, right: left + width, bottom: top + HEIGHT });
  const middle = y - HEIGHT / 2;
  return [
    box(x + clear, middle),
    box(x - clear - width, middle),
    box(x + 0.7 * clear, y - 0.7 * clear - HEIGHT),
    box(x + 0.7 * clear, y + 0.7 * clear),
    box(x - 0.7 * clear - width, y - 0.7 * clear - HEIGHT),
    box(x - 0.7 * clear - width, y + 0.7 * clear),
    box(x - width / 2, y - clear - HEIGHT),
    box(x - width / 2, y + clear),
  ];
}

/**
 * Sets labels beside their marks, each where it is free of the others and of what is taken; one that finds no place is left out, the key has it anyway.
 *
 * @param taken boxes that labels must keep off, such as marks.
 */
export function placeLabels(labels: readonly Label[], frame: Box, taken: readonly Box[]): string {
  const occupied = [...taken];
  const drawn: string[] = [];
  for (const label of labels) {
    const box = candidates(label).find(
      (place) => inside(place, frame) && !occupied.some((other) => overlap(place, other)),
    );
    if (box === undefined) continue;
    occupied.push(box);
    drawn.push(text(box.left, box.bottom - 2, label.text, { "font-size": SIZE.label, ...HALO }));
  }
  return drawn.join("");
}
