import { type FigureWord, figureWord, formatLevel, formatNumber, formatOffset } from "#text";
import { type AxisParts, axisParts } from "./axis-parts.ts";
import { describeElement, describeFigure } from "./describe.ts";
import { hatch } from "./hatch.ts";
import { drawKey, drawNotes, type KeyEntry, lineEntry } from "./key-column.ts";
import { BODY_TOP, drawPage } from "./page.ts";
import { markedPlaces, type Place } from "./places.ts";
import { positionMarker } from "./position-marker.ts";
import { allowanceBar } from "./section-allowances.ts";
import { errorBar } from "./section-band.ts";
import { drawSection, unreadStretches } from "./section-drawing.ts";
import { type SectionPanel, sectionPanels } from "./section-panels.ts";
import { allowanceLevels, sectionScale } from "./section-scale.ts";
import { AS_BUILT, allowanceLine, BAND, BAND_EDGE, LINE } from "./style.ts";
import { circle, line, tag } from "./svg/markup.ts";
import { type EllipseOf, ellipseLookup, lineBand95 } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

function placeEntry(
  view: ElementView,
  ellipseOf: EllipseOf,
  { position, label, row, alsoWorst }: Place,
): KeyEntry {
  const { language } = view;
  const ellipse = ellipseOf(row);
  const written = (panel: SectionPanel) => {
    const offset = `${panel.title} ${formatOffset(panel.offsetM(row), language)}`;
    if (ellipse === undefined) return offset;
    return `${offset} ± ${formatOffset(lineBand95(ellipse, panel.fromAlongRad), language)}`;
  };
  return {
    label,
    details: [
      figureWord("atLevel", language, { level: formatLevel(-row.downM, language) }),
      ...sectionPanels(view).map(written),
    ],
    symbol: (x, y) => positionMarker(position, x, y + (position === "worst" || alsoWorst ? 6 : 0), alsoWorst),
  };
}

function allowanceEntry(view: ElementView, parts: AxisParts, halfM: number, index: number): KeyEntry {
  const { label, allowanceM } = view.allowances[index]!;
  const { language } = view;
  const levels = allowanceLevels(view, parts);
  const rangeOf = (component: SectionPanel["component"]) => {
    const values = levels.map((downM) => allowanceM(downM, component)).filter(Number.isFinite);
    if (values.length === 0) return undefined;
    const [least, most] = [Math.min(...values), Math.max(...values)];
    const range = [...new Set([least, most].map((value) => formatOffset(value, language)))].join(" … ");
    const beyond = least > halfM ? `, ${figureWord("outsideFrame", language)}` : "";
    return { text: range + beyond, count: values.length };
  };
  const ranges = sectionPanels(view).map((panel) => ({ ...panel, range: rangeOf(panel.component) }));
  const texts = new Set(ranges.map(({ range }) => range?.text));
  const details = ranges.flatMap(({ title, range }) =>
    range === undefined ? [] : [texts.size === 1 ? range.text : `${title} ${range.text}`],
  );
  const entry = lineEntry(`${figureWord("allowance", language)}: ${label}`, allowanceLine(index), [
    ...new Set(details),
  ]);
  return ranges.some(({ range }) => range?.count === 1)
    ? { ...entry, symbol: (x, y) => allowanceBar(x - 8, x + 8, y) }
    : entry;
}

function keyEntries(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  halfM: number,
): KeyEntry[] {
  const word = (name: FigureWord) => figureWord(name, view.language);
  const asBuilt: KeyEntry = {
    label: word("asBuiltStations"),
    details: [],
    symbol: (x, y) =>
      line(x - 14, y, x + 14, y, LINE.asBuilt) +
      circle(x, y, 2.2, { fill: "#FFFFFF", stroke: AS_BUILT, "stroke-width": 1.1 }),
  };
  return [
    lineEntry(word("designAxis"), LINE.design),
    ...(parts.rows.length > 0 ? [asBuilt] : []),
    ...(parts.gaps.length > 0 ? [lineEntry(word("gap"), LINE.gap)] : []),
    ...(unreadStretches(view, parts).length > 0
      ? [{ label: word("notRead"), details: [], symbol: hatchSample }]
      : []),
    ...(knowsUncertainty(view, parts) ? [{ label: word("bandEntry"), details: [], symbol: bandSample }] : []),
    ...places.map((place) => placeEntry(view, ellipseLookup(view), place)),
    ...view.allowances.map((_, index) => allowanceEntry(view, parts, halfM, index)),
  ];
}

function knowsUncertainty(view: ElementView, parts: AxisParts): boolean {
  const ellipseOf = ellipseLookup(view);
  return view.ellipses.length > 0 && parts.rows.some((row) => ellipseOf(row) !== undefined);
}

function bandSample(x: number, y: number): string {
  const [top, bottom] = [y - 9, y + 9];
  return (
    tag("rect", { x: x - 9, y: top, width: 18, height: bottom - top, ...BAND }) +
    line(x - 9, top, x - 9, bottom, BAND_EDGE) +
    line(x + 9, top, x + 9, bottom, BAND_EDGE) +
    errorBar(x - 9, x + 9, y)
  );
}

function hatchSample(x: number, y: number): string {
  const box = { left: x - 14, top: y - 7, right: x + 14, bottom: y + 7 };
  return hatch(box) + tag("rect", { x: box.left, y: box.top, width: 28, height: 14, ...LINE.leader });
}

function scaleNote(view: ElementView, factor: number): string {
  if (factor === 1) return figureWord("offsetsDrawnTrue", view.language);
  return figureWord(factor > 1 ? "offsetsDrawn" : "offsetsDrawnSmaller", view.language, {
    factor: formatNumber(factor > 1 ? factor : 1 / factor, 0, view.language),
  });
}

/**
 * Section of one element as SVG text: level on the upright axis, offsets from the design axis in two panels, each station marked.
 *
 * Panels are east and north, or along and across where the element has such directions. Both have one scale, a round number of times
 * larger than that of levels; the drawing says how many. What was not read is hatched, and nothing is drawn there but a dotted line across a gap.
 *
 * Frame: offsets square to the design axis, metres; level = -down.
 * Source: common practice, no source.
 */
export function sectionFigure(view: ElementView): string {
  const parts = axisParts(view);
  const places = markedPlaces(view, parts);
  const scale = sectionScale(view, parts);
  const section = drawSection(view, parts, places, scale);
  const key = drawKey(keyEntries(view, parts, places, scale.halfM), BODY_TOP + 18);
  const note = scaleNote(view, scale.factor);
  const bandNote = knowsUncertainty(view, parts) ? [figureWord("bandNote", view.language)] : [];
  const notes = drawNotes([note, ...bandNote], key.bottom + 2);
  return drawPage(view, {
    figureId: "section",
    title: figureWord("section", view.language),
    subtitle: describeElement(view),
    description: describeFigure(view, places, [note, ...bandNote].join(" ")),
    body: section.markup + key.markup + notes.markup,
    bodyBottom: Math.max(section.bottom, notes.bottom),
  });
}
