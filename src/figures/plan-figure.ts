import { type AxisRow, degreesFromRadians, wrapToTurn } from "#core";
import { type FigureWord, figureWord, formatBearing, formatLevel, formatNumber, formatOffset } from "#text";
import { type AxisParts, axisParts } from "./axis-parts.ts";
import { describeElement, describeFigure } from "./describe.ts";
import { drawKey, drawNotes, KEY_LEFT, type KeyEntry, lineEntry, northArrow } from "./key-column.ts";
import { BODY_TOP, drawPage } from "./page.ts";
import { markedPlaces, type Place } from "./places.ts";
import { allowanceText, planAllowances } from "./plan-allowances.ts";
import { drawPlan } from "./plan-drawing.ts";
import { planOffset } from "./plan-offset.ts";
import { DESIGN_OUTLINE, lowestPlace } from "./plan-outlines.ts";
import { positionMarker } from "./position-marker.ts";
import { allowanceLine, ELLIPSE, LINE, SIZE } from "./style.ts";
import { tag, text } from "./svg/markup.ts";
import { ellipseLookup } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

const NORTH_ARROW = 44;

/** Bearing of an offset, degrees clockwise from grid north, [0, 360). */
function bearingOf(view: ElementView, row: AxisRow): number {
  const { north, east } = planOffset(view, row);
  return degreesFromRadians(wrapToTurn(Math.atan2(east, north)));
}

function placeEntry(view: ElementView, place: Place): KeyEntry {
  const { language } = view;
  const u95M = ellipseLookup(view)(place.row)?.u95M;
  const known = u95M === undefined ? "" : ` ± ${formatOffset(u95M, language)}`;
  const towards =
    place.row.offsetM > 0
      ? ` ${figureWord("towards", language, { bearing: formatBearing(bearingOf(view, place.row), language) })}`
      : "";
  return {
    label: place.label,
    details: [
      formatOffset(place.row.offsetM, language) + known + towards,
      figureWord("atLevel", language, { level: formatLevel(-place.row.downM, language) }),
    ],
    symbol: (x, y) =>
      positionMarker(
        place.position,
        x,
        y + (place.position === "worst" || place.alsoWorst ? 6 : 0),
        place.alsoWorst,
      ),
  };
}

function outlineEntries(view: ElementView, places: readonly Place[]): KeyEntry[] {
  if (!view.outline || view.element.section === undefined) return [];
  const lowest = lowestPlace(places);
  const design = lineEntry(figureWord("outlineDesign", view.language), DESIGN_OUTLINE);
  if (lowest === undefined) return [design];
  const label = figureWord("outlineAsBuilt", view.language, { place: lowest.name });
  return [design, lineEntry(label, LINE.outline)];
}

/** An exaggeration is said in bold beside the ellipse itself, where it cannot be missed. */
function ellipseEntry(view: ElementView, factor: number): KeyEntry {
  const { language } = view;
  const shown = formatNumber(factor, 0, language);
  return {
    label: figureWord("ellipseEntry", language),
    details: factor === 1 ? [] : [figureWord("ellipsesLarger", language, { factor: shown })],
    symbol: ellipseSample,
  };
}

const ellipseSample = (x: number, y: number): string =>
  tag("ellipse", { cx: x, cy: y, rx: 13, ry: 7, ...ELLIPSE });

function keyEntries(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  ellipseFactor: number | undefined,
): KeyEntry[] {
  const word = (name: FigureWord) => figureWord(name, view.language);
  const allowances = planAllowances(view, parts).map(({ label, circles, index }) =>
    lineEntry(
      `${word("allowance")}: ${label}`,
      allowanceLine(index),
      circles.map(({ place, drawn, ...shape }) => {
        const value = allowanceText(shape, view.language);
        const named = place === undefined ? value : `${place}: ${value}`;
        return drawn ? named : `${named}, ${word("outsideFrame")}`;
      }),
    ),
  );
  return [
    lineEntry(word("designAxis"), LINE.design),
    ...(parts.rows.length > 0 ? [lineEntry(word("asBuilt"), LINE.asBuilt)] : []),
    ...(parts.gaps.length > 0 ? [lineEntry(word("gap"), LINE.gap)] : []),
    ...(ellipseFactor === undefined ? [] : [ellipseEntry(view, ellipseFactor)]),
    ...places.map((place) => placeEntry(view, place)),
    ...allowances,
    ...outlineEntries(view, places),
  ];
}

/**
 * Plan of one element as SVG text: offsets of the as-built axis from the design axis, north up, one scale in all directions.
 *
 * A raked element is seen down its design axis, so that an offset has its true length and an allowance stays a circle.
 * Rows with a missing value are left out and the line is broken there; an element without readings shows the design alone.
 *
 * Frame: site north and east, metres, square to the design axis.
 * Source: common practice, no source.
 */
export function planFigure(view: ElementView): string {
  const parts = axisParts(view);
  const places = markedPlaces(view, parts);
  const plan = drawPlan(view, parts, places);
  const arrowFoot = BODY_TOP + 16 + NORTH_ARROW;
  const key = drawKey(keyEntries(view, parts, places, plan.ellipseFactor), arrowFoot + 16);
  const note = figureWord(view.element.rakeRad === 0 ? "seenPlumb" : "seenDown", view.language);
  const ellipseNote = plan.ellipseFactor === undefined ? [] : [figureWord("ellipseNote", view.language)];
  const notes = drawNotes([note, ...ellipseNote], key.bottom + 2);
  return drawPage(view, {
    figureId: "plan",
    title: figureWord("plan", view.language),
    subtitle: describeElement(view),
    description: describeFigure(view, places, [note, ...ellipseNote].join(" ")),
    body: [
      plan.markup,
      northArrow(KEY_LEFT + 15, arrowFoot, NORTH_ARROW),
      text(KEY_LEFT + 38, arrowFoot - 12, figureWord("gridNorth", view.language), {
        "font-size": SIZE.label,
      }),
      key.markup,
      notes.markup,
    ].join(""),
    bodyBottom: Math.max(plan.bottom, notes.bottom),
  });
}
