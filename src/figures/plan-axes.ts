import { figureWord } from "#text";
import type { AxisParts } from "./axis-parts.ts";
import type { Box } from "./place-labels.ts";
import { planOffset } from "./plan-offset.ts";
import { PLAN_FRAME, PLAN_MIDDLE, type PlanScale } from "./plan-scale.ts";
import { HALO, LINE, SIZE } from "./style.ts";
import { circle, line, tag, text } from "./svg/markup.ts";
import { textWidth } from "./svg/text-width.ts";
import type { ElementView } from "./view.ts";

/** A diagonal of the plan: signs of east and north. */
export type Diagonal = readonly [east: 1 | -1, north: 1 | -1];

/** The diagonal on which the fewest rows lie, so that ring values stay readable. */
export function freeDiagonal(view: ElementView, parts: AxisParts): Diagonal {
  const diagonals: readonly Diagonal[] = [
    [-1, 1],
    [-1, -1],
    [1, 1],
    [1, -1],
  ];
  const inTheWay = ([east, north]: Diagonal) =>
    parts.rows.filter((row) => {
      const offset = planOffset(view, row);
      return offset.east * east > 0 && offset.north * north > 0;
    }).length;
  return diagonals.toSorted((a, b) => inTheWay(a) - inTheWay(b))[0]!;
}

const multiples = (scale: PlanScale): number[] =>
  Array.from({ length: Math.floor(scale.halfM / scale.stepM + 1e-9) }, (_, i) => (i + 1) * scale.stepM);

/** Rings of equal offset round the design axis, dotted. */
export function drawRings(scale: PlanScale): string {
  return tag(
    "g",
    { "data-part": "rings" },
    ...multiples(scale).map((radiusM) =>
      circle(PLAN_MIDDLE.x, PLAN_MIDDLE.y, scale.length(radiusM), LINE.grid),
    ),
  );
}

/** The value of each ring, on a diagonal; `boxes` are what they take up. */
export function drawRingValues(
  view: ElementView,
  scale: PlanScale,
  [east, north]: Diagonal,
): { readonly markup: string; readonly boxes: readonly Box[] } {
  const values = multiples(scale).map((radiusM) => {
    const content = `${scale.unit.write(radiusM, view.language)} ${scale.unit.name}`;
    const reach = scale.length(radiusM) * Math.SQRT1_2;
    const half = textWidth(content, SIZE.label) / 2;
    return { content, x: PLAN_MIDDLE.x + east * reach, y: PLAN_MIDDLE.y - north * reach, half };
  });
  return {
    markup: values
      .map(({ content, x, y }) =>
        text(x, y + 4, content, { "font-size": SIZE.label, "text-anchor": "middle", ...HALO }),
      )
      .join(""),
    boxes: values.map(({ x, y, half }) => ({ left: x - half, right: x + half, top: y - 7, bottom: y + 6 })),
  };
}

/** Border, centre lines through the design axis, and the scales along the border. */
export function drawPlanAxes(view: ElementView, scale: PlanScale): string {
  const rings = multiples(scale);
  // every second value where all of them would not find room below the drawing
  const shown = rings.length > 3 ? rings.filter((_, i) => i % 2 === 1) : rings;
  const ticks = [...shown.map((value) => -value).reverse(), 0, ...shown];
  const { left, top, right, bottom } = PLAN_FRAME;
  const small = { "font-size": SIZE.label };
  const write = (metres: number) => scale.unit.write(metres, view.language);
  return tag(
    "g",
    { "data-part": "axes" },
    tag("rect", { x: left, y: top, width: right - left, height: bottom - top, ...LINE.frame }),
    line(left, PLAN_MIDDLE.y, right, PLAN_MIDDLE.y, LINE.design),
    line(PLAN_MIDDLE.x, top, PLAN_MIDDLE.x, bottom, LINE.design),
    ...ticks.flatMap((value) => [
      line(scale.x(value), bottom, scale.x(value), bottom + 4, LINE.level),
      text(scale.x(value), bottom + 16, write(value), { ...small, "text-anchor": "middle" }),
      line(left - 4, scale.y(value), left, scale.y(value), LINE.level),
      text(left - 7, scale.y(value) + 3.8, write(value), { ...small, "text-anchor": "end" }),
    ]),
    text(PLAN_MIDDLE.x, bottom + 32, `${figureWord("offsetEast", view.language)} (${scale.unit.name})`, {
      "text-anchor": "middle",
    }),
    text(0, 0, `${figureWord("offsetNorth", view.language)} (${scale.unit.name})`, {
      "text-anchor": "middle",
      transform: `translate(22 ${PLAN_MIDDLE.y}) rotate(-90)`,
    }),
  );
}
