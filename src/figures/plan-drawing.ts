import { line as curve } from "d3-shape";
import type { AxisRow } from "#core";
import { figureWord } from "#text";
import type { AxisParts } from "./axis-parts.ts";
import { type Box, type Label, placeLabels } from "./place-labels.ts";
import type { Place } from "./places.ts";
import { allowanceText, planAllowances } from "./plan-allowances.ts";
import { drawPlanAxes, drawRings, drawRingValues, freeDiagonal } from "./plan-axes.ts";
import { planEllipses } from "./plan-ellipses.ts";
import { planOffset } from "./plan-offset.ts";
import { drawOutlines } from "./plan-outlines.ts";
import { PLAN_FRAME, PLAN_MIDDLE, type PlanScale, planScale } from "./plan-scale.ts";
import { positionMarker } from "./position-marker.ts";
import { AS_BUILT, allowanceLine, HALO, LINE } from "./style.ts";
import { circle, polygon, tag, text } from "./svg/markup.ts";
import type { ElementView } from "./view.ts";

/** Stations closer than this on the page, on average, are not marked: they would hide the line. Drawing units. */
const ROOM_FOR_STATIONS = 5.5;

/** Draws the square of the plan with its axes; `bottom` is where it ends on the page. */
export function drawPlan(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
): { readonly markup: string; readonly bottom: number; readonly ellipseFactor: number | undefined } {
  const scale = planScale(view, parts);
  const ellipses = planEllipses(view, parts, places, scale);
  const marks = places.map((place) => {
    const { north, east } = planOffset(view, place.row);
    return { ...place, x: scale.x(east), y: scale.y(north) };
  });
  const diagonal = freeDiagonal(view, parts);
  const ringValues = drawRingValues(view, scale, diagonal);
  const isWide = ({ position, alsoWorst }: Place) => position === "worst" || alsoWorst;
  const taken = marks.map((mark): Box => {
    const r = isWide(mark) ? 13 : 6;
    return { left: mark.x - r, top: mark.y - r, right: mark.x + r, bottom: mark.y + r };
  });
  const labels = marks.map(
    (mark): Label => ({ x: mark.x, y: mark.y, clear: isWide(mark) ? 16 : 9, text: mark.name }),
  );
  const circleLabels = allowanceLabels(view, parts, scale, -diagonal[0]);
  const markup = [
    drawRings(scale),
    drawPlanAxes(view, scale),
    ...drawOutlines(view, scale, places),
    drawAllowances(view, parts, scale),
    ellipses.markup,
    drawAsBuilt(view, parts, scale),
    ringValues.markup,
    ...marks.map(({ position, x, y, alsoWorst }) => positionMarker(position, x, y, alsoWorst)),
    placeLabels([...labels, ...circleLabels], PLAN_FRAME, [...taken, ...ringValues.boxes]),
    places.length > 0
      ? ""
      : text(PLAN_MIDDLE.x, PLAN_MIDDLE.y - 60, figureWord("noPath", view.language), {
          "text-anchor": "middle",
          "font-weight": "bold",
          ...HALO,
        }),
  ].join("");
  return {
    markup: tag("g", { "data-part": "plan", "data-units-per-m": scale.length(1) }, markup),
    bottom: PLAN_FRAME.bottom + 40,
    ellipseFactor: ellipses.factor,
  };
}

function drawAllowances(view: ElementView, parts: AxisParts, scale: PlanScale): string {
  return planAllowances(view, parts)
    .flatMap(({ circles, index }) =>
      circles
        .filter(({ drawn }) => drawn)
        .map(({ radiusM, rectangle }) => {
          const style = { ...allowanceLine(index), "data-part": "allowance" };
          return rectangle === undefined
            ? circle(PLAN_MIDDLE.x, PLAN_MIDDLE.y, scale.length(radiusM), style)
            : polygon(cornersOf(rectangle, view.alongBearingRad, scale), style);
        }),
    )
    .join("");
}

/** Corners of a rectangle round the design axis, its first half side towards a bearing. */
function cornersOf(
  { alongM, acrossM }: { readonly alongM: number; readonly acrossM: number },
  bearingRad: number,
  scale: PlanScale,
): readonly (readonly [number, number])[] {
  const [cos, sin] = [Math.cos(bearingRad), Math.sin(bearingRad)];
  return [
    [alongM, acrossM],
    [alongM, -acrossM],
    [-alongM, -acrossM],
    [-alongM, acrossM],
  ].map(([along, across]) => [scale.x(along! * sin + across! * cos), scale.y(along! * cos - across! * sin)]);
}

/** The allowance and the level at which it applies, written on its circle, on the side where the ring values are not. */
function allowanceLabels(
  view: ElementView,
  parts: AxisParts,
  scale: PlanScale,
  side: number,
): readonly Label[] {
  return planAllowances(view, parts).flatMap(({ circles }) =>
    circles.flatMap(({ radiusM, place, drawn, rectangle }) => {
      if (!drawn) return [];
      const value = allowanceText({ radiusM, rectangle }, view.language);
      const content = place === undefined ? value : `${place} ${value}`;
      const reach = scale.length(radiusM) * Math.SQRT1_2;
      return [{ x: PLAN_MIDDLE.x + side * reach, y: PLAN_MIDDLE.y + reach, clear: 8, text: content }];
    }),
  );
}

function drawAsBuilt(view: ElementView, parts: AxisParts, scale: PlanScale): string {
  const at = (row: AxisRow): [number, number] => {
    const { north, east } = planOffset(view, row);
    return [scale.x(east), scale.y(north)];
  };
  const path = curve<AxisRow>(
    (row) => at(row)[0],
    (row) => at(row)[1],
  ).digits(2);
  const stations = parts.rows.filter((row) => !row.interpolated).map(at);
  const steps = stations.slice(1).map(([x, y], i) => Math.hypot(x - stations[i]![0], y - stations[i]![1]));
  const apart = steps.reduce((sum, step) => sum + step, 0) / Math.max(1, steps.length);
  const ring = { fill: "#FFFFFF", stroke: AS_BUILT, "stroke-width": 1.1 };
  const marked = stations.length === 1 || apart >= ROOM_FOR_STATIONS ? stations : [];
  return tag(
    "g",
    { "data-part": "as-built" },
    ...parts.gaps.map((gap) => tag("path", { d: path(gap)!, ...LINE.gap })),
    ...parts.read
      .filter((stretch) => stretch.length > 1)
      .map((stretch) => tag("path", { d: path(stretch)!, ...LINE.asBuilt })),
    ...marked.map(([x, y]) => circle(x, y, 2, ring)),
  );
}
