/** Advance widths of DejaVu Sans and DejaVu Sans Bold for the signs 32 to 126, in thousandths of the font size. Source: tables hmtx and cmap of the fonts, version 2.37. */
const REGULAR = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
  636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295,
  295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838,
  500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521,
  392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];
const BOLD = [
  348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696, 696,
  696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830, 683, 683, 821, 837, 372,
  372, 775, 637, 995, 837, 850, 733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838,
  500, 500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687, 716, 716, 493, 595,
  478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838,
];
/** Letters with marks are about as wide as this; everything wider than Latin is taken as a full square. */
const OTHER_LATIN = 640;
const FULL_SQUARE = 1000;
const LAST_LATIN = 0x2fff;

/** Width of a line of text on a drawing, in the units of `size`. Exact for ASCII, near enough for the rest. */
export function textWidth(content: string, size: number, bold = false): number {
  const widths = bold ? BOLD : REGULAR;
  let thousandths = 0;
  for (const sign of content) {
    const code = sign.codePointAt(0)!;
    thousandths += widths[code - 32] ?? (code > LAST_LATIN ? FULL_SQUARE : OTHER_LATIN);
  }
  return (thousandths * size) / 1000;
}

/** The text, cut with "…" where it would be wider than there is room. */
export function fitText(content: string, size: number, room: number, bold = false): string {
  if (textWidth(content, size, bold) <= room) return content;
  const signs = [...content];
  while (signs.length > 0 && textWidth(`${signs.join("")}…`, size, bold) > room) signs.pop();
  return `${signs.join("").trimEnd()}…`;
}

/** The text in lines no wider than there is room; broken at spaces, a single word too long is cut. */
export function wrapText(content: string, size: number, room: number, bold = false): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of content.split(/\s+/).filter((part) => part !== "")) {
    const longer = current === "" ? word : `${current} ${word}`;
    if (textWidth(longer, size, bold) <= room) {
      current = longer;
      continue;
    }
    if (current !== "") lines.push(current);
    current = fitText(word, size, room, bold);
  }
  if (current !== "") lines.push(current);
  return lines;
}
