import type { Verdict } from "#core";
import { verdictSigns } from "#text";
import { INK } from "./style.ts";
import { circle, polygon, tag } from "./svg/markup.ts";

/**
 * The shape of a verdict, centred at x, y: circle with tick, triangle with question mark, square with cross, open circle.
 *
 * The sign inside is drawn, not set as type, so that it needs no font and stays sharp in a one-bit print.
 *
 * @param r half the height of the shape, drawing units.
 */
export function verdictSymbol(verdict: Verdict, x: number, y: number, r: number): string {
  const { shape, fill } = verdictSigns[verdict];
  const outline = { fill, stroke: INK, "stroke-width": r / 6, "stroke-linejoin": "round" };
  const sign = (d: string, stroke: string) =>
    tag("path", {
      d,
      transform: `translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${(r / 10).toFixed(4)})`,
      fill: "none",
      stroke,
      "stroke-width": 3,
      "stroke-linecap": "round",
      "stroke-linejoin": "round",
    });
  switch (shape) {
    case "circle-tick":
      return circle(x, y, r, outline) + sign("M-5 0.5L-1.5 4.5L5 -4", "#FFFFFF");
    case "triangle-question":
      return (
        polygon(
          [
            [x, y - 1.15 * r],
            [x + 1.2 * r, y + 0.95 * r],
            [x - 1.2 * r, y + 0.95 * r],
          ],
          outline,
        ) + tag("g", { "data-sign": "question" }, questionMark(x, y + 0.18 * r, r))
      );
    case "square-cross":
      return (
        tag("rect", { x: x - 0.95 * r, y: y - 0.95 * r, width: 1.9 * r, height: 1.9 * r, ...outline }) +
        sign("M-5 -5L5 5M5 -5L-5 5", "#FFFFFF")
      );
    case "open-circle":
      return circle(x, y, r * 0.95, { ...outline, "stroke-width": r / 4.5 });
  }
}

function questionMark(x: number, y: number, r: number): string {
  const place = `translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${(r / 10).toFixed(4)})`;
  return tag(
    "g",
    { transform: place },
    tag("path", {
      d: "M-2.9 -3.6A2.9 2.9 0 1 1 1.2 -0.9Q0 -0.2 0 1.6",
      fill: "none",
      stroke: INK,
      "stroke-width": 2,
      "stroke-linecap": "round",
    }),
    circle(0, 5, 1.35, { fill: INK }),
  );
}
