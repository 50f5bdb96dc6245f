import { INK } from "./style.ts";
import { circle, line, polygon, tag } from "./svg/markup.ts";

/** Places on the axis that a reader looks for. */
export type Position = "head" | "cutoff" | "toe" | "worst";

const R = 5.2;

/** Marks fill up on the way down: an open diamond at the head, half of it at cut-off, a solid one at the toe. The worst place gets a sight around it. */
export function positionMarker(position: Position, x: number, y: number, alsoWorst = false): string {
  if (position === "worst") return sight(x, y);
  const diamond = (fill: string) =>
    polygon(
      [
        [x, y - R],
        [x + R, y],
        [x, y + R],
        [x - R, y],
      ],
      { fill, stroke: INK, "stroke-width": 1.2, "stroke-linejoin": "round" },
    );
  const lowerHalf = polygon(
    [
      [x - R, y],
      [x + R, y],
      [x, y + R],
    ],
    { fill: INK },
  );
  const drawn = {
    head: diamond("#FFFFFF"),
    cutoff: diamond("#FFFFFF") + lowerHalf,
    toe: diamond(INK),
  }[position];
  return tag("g", { "data-position": position }, drawn) + (alsoWorst ? sight(x, y) : "");
}

function sight(x: number, y: number): string {
  const style = { stroke: INK, "stroke-width": 1.3, fill: "none" };
  const inner = 8;
  const outer = 13;
  return tag(
    "g",
    { "data-position": "worst" },
    circle(x, y, inner, style),
    line(x - outer, y, x - inner, y, style),
    line(x + inner, y, x + outer, y, style),
    line(x, y - outer, x, y - inner, style),
    line(x, y + inner, x, y + outer, style),
  );
}
