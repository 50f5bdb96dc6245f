import type { Box } from "./place-labels.ts";
import { INK } from "./style.ts";
import { fixed, tag } from "./svg/markup.ts";

/** Distance between two strokes along an edge, drawing units. */
const STEP = 11;

/**
 * Strokes at 45 degrees over a box: what was not read.
 *
 * Drawn as lines instead of a pattern fill, because a pattern is turned into grey dots by some programs and lost in a one-bit print.
 */
export function hatch({ left, top, right, bottom }: Box): string {
  const strokes: string[] = [];
  // along each stroke x + y is the same
  for (let sum = left + top + STEP; sum < right + bottom; sum += STEP) {
    const x1 = Math.max(left, sum - bottom);
    const x2 = Math.min(right, sum - top);
    strokes.push(`M${fixed(x1)},${fixed(sum - x1)}L${fixed(x2)},${fixed(sum - x2)}`);
  }
  return tag("path", {
    d: strokes.join(""),
    stroke: INK,
    "stroke-width": 0.7,
    fill: "none",
    "data-part": "not-read",
  });
}
