import { area, line as curve } from "d3-shape";
import type { AxisRow } from "#core";
import type { AxisParts } from "./axis-parts.ts";
import type { Place } from "./places.ts";
import type { SectionPanel } from "./section-panels.ts";
import type { SectionScale } from "./section-scale.ts";
import { BAND, BAND_EDGE, ERROR_BAR } from "./style.ts";
import { line, tag } from "./svg/markup.ts";
import { ellipseLookup, lineBand95, uncertainRows } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

/** Half the height of the end stroke of an error bar, drawing units. */
const CAP = 3;

interface Edge {
  readonly y: number;
  readonly left: number;
  readonly right: number;
}

/** The band that holds the true axis with 95 % in the direction of a panel, along all that was read. */
export function drawBand(
  view: ElementView,
  parts: AxisParts,
  scale: SectionScale,
  panel: SectionPanel,
  index: 0 | 1,
): string {
  const edges = edgesIn(view, scale, panel, index);
  const bands = parts.read.flatMap((stretch) => {
    const known = stretch.flatMap((row) => edges(row) ?? []);
    if (known.length < 2) return [];
    const shape = area<Edge>()
      .y((edge) => edge.y)
      .x0((edge) => edge.left)
      .x1((edge) => edge.right)
      .digits(2);
    const side = (of: "left" | "right") => {
      const path = curve<Edge>(
        (edge) => edge[of],
        (edge) => edge.y,
      ).digits(2);
      return tag("path", { d: path(known)!, ...BAND_EDGE });
    };
    return [tag("path", { d: shape(known)!, ...BAND }), side("left"), side("right")];
  });
  return bands.length === 0 ? "" : tag("g", { "data-part": "band" }, ...bands);
}

/** Bars over the same 95 %, which stay where a print in one ink loses the tint. */
export function drawErrorBars(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  scale: SectionScale,
  panel: SectionPanel,
  index: 0 | 1,
): string {
  const edges = edgesIn(view, scale, panel, index);
  const bars = uncertainRows(view, parts, places).flatMap((row) => {
    const edge = edges(row);
    return edge === undefined ? [] : [errorBar(edge.left, edge.right, edge.y)];
  });
  return bars.length === 0 ? "" : tag("g", { "data-part": "error-bars" }, ...bars);
}

export function errorBar(left: number, right: number, y: number): string {
  return (
    line(left, y, right, y, ERROR_BAR) +
    line(left, y - CAP, left, y + CAP, ERROR_BAR) +
    line(right, y - CAP, right, y + CAP, ERROR_BAR)
  );
}

function edgesIn(
  view: ElementView,
  scale: SectionScale,
  panel: SectionPanel,
  index: 0 | 1,
): (row: AxisRow) => Edge | undefined {
  const ellipseOf = ellipseLookup(view);
  return (row) => {
    const ellipse = ellipseOf(row);
    if (ellipse === undefined) return undefined;
    const half = lineBand95(ellipse, panel.fromAlongRad);
    const offset = panel.offsetM(row);
    return {
      y: scale.y(row.downM),
      left: scale.x(index, offset - half),
      right: scale.x(index, offset + half),
    };
  };
}
