import { scaleLinear } from "d3-scale";
import { line as curve } from "d3-shape";
import type { AxisRow } from "#core";
import { figureWord, formatNumber } from "#text";
import type { AxisParts } from "./axis-parts.ts";
import { hatch } from "./hatch.ts";
import { offsetUnit } from "./offset-scale.ts";
import { figureKey } from "./page.ts";
import type { Place } from "./places.ts";
import { positionMarker } from "./position-marker.ts";
import { drawSectionAllowances } from "./section-allowances.ts";
import { drawBand, drawErrorBars } from "./section-band.ts";
import { type SectionPanel, sectionPanels } from "./section-panels.ts";
import { PANEL_WIDTH, type SectionScale } from "./section-scale.ts";
import { AS_BUILT, HALO, LINE, SIZE } from "./style.ts";
import { circle, line, polygon, tag, text } from "./svg/markup.ts";
import { textWidth } from "./svg/text-width.ts";
import type { ElementView } from "./view.ts";

const LEVEL_TICKS = 9;
const OFFSET_TICKS = 4;
const MANY_STATIONS = 60;
/** Stretches shorter than this share of the height are not worth a hatch. */
const SMALLEST_HATCH = 0.006;

/** Draws the two panels with their axes; `bottom` is where they end on the page. */
export function drawSection(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  scale: SectionScale,
): { readonly markup: string; readonly bottom: number } {
  const key = figureKey("section", view.element.id);
  const panels = sectionPanels(view).map((panel, i) =>
    drawPanel(view, parts, places, scale, panel, i === 0 ? 0 : 1, key),
  );
  const markup = tag(
    "g",
    { "data-part": "section", "data-offset-factor": String(scale.factor) },
    definitions(scale, key),
    levelAxis(view, scale),
    ...panels,
    parts.rows.length > 0 ? "" : nothingRead(view, scale),
  );
  return { markup, bottom: scale.bottom + 40 };
}

function nothingRead(view: ElementView, scale: SectionScale): string {
  const content = figureWord("noPath", view.language);
  const half = textWidth(content, SIZE.body, true) / 2 + 12;
  const [x, y] = [(scale.left[0] + scale.left[1] + PANEL_WIDTH) / 2, (scale.top + scale.bottom) / 2];
  return (
    tag("rect", { x: x - half, y: y - 14, width: 2 * half, height: 28, ...LINE.frame, fill: "#FFFFFF" }) +
    text(x, y + 4, content, { "text-anchor": "middle", "font-weight": "bold" })
  );
}

function definitions(scale: SectionScale, key: string): string {
  return tag(
    "defs",
    {},
    ...([0, 1] as const).map((panel) =>
      tag(
        "clipPath",
        { id: `${key}-panel-${panel}` },
        tag("rect", {
          x: scale.left[panel],
          y: scale.top,
          width: PANEL_WIDTH,
          height: scale.bottom - scale.top,
        }),
      ),
    ),
  );
}

function levelAxis(view: ElementView, scale: SectionScale): string {
  const levels = scaleLinear([-scale.toDownM, -scale.fromDownM], [0, 1]).ticks(LEVEL_TICKS);
  const step = levels.length > 1 ? levels[1]! - levels[0]! : 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return tag(
    "g",
    { "data-part": "levels" },
    ...levels.flatMap((level) => [
      ...([0, 1] as const).map((panel) =>
        line(scale.left[panel], scale.y(-level), scale.left[panel] + PANEL_WIDTH, scale.y(-level), LINE.grid),
      ),
      line(scale.left[0] - 4, scale.y(-level), scale.left[0], scale.y(-level), LINE.level),
      text(
        scale.left[0] - 7,
        scale.y(-level) + 3.8,
        formatNumber(level, decimals, view.language, { signed: true }),
        { "font-size": SIZE.label, "text-anchor": "end" },
      ),
    ]),
    text(0, 0, `${figureWord("level", view.language)} (m)`, {
      "text-anchor": "middle",
      transform: `translate(24 ${(scale.top + scale.bottom) / 2}) rotate(-90)`,
    }),
  );
}

/** Stretches of level between head and toe in which nothing was read, as down from and to. */
export function unreadStretches(view: ElementView, parts: AxisParts): (readonly [number, number])[] {
  const { head, toeDownM } = view.element;
  const first = parts.rows[0]?.downM;
  const last = parts.rows.at(-1)?.downM;
  if (first === undefined || last === undefined) return toeDownM === undefined ? [] : [[head.down, toeDownM]];
  const bottom = toeDownM ?? last;
  const least = SMALLEST_HATCH * Math.abs(bottom - head.down);
  return [
    [head.down, first] as const,
    ...parts.gaps.map(([above, below]) => [above.downM, below.downM] as const),
    [last, bottom] as const,
  ].filter(([from, to]) => to - from > least);
}

function drawPanel(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  scale: SectionScale,
  panel: SectionPanel,
  index: 0 | 1,
  key: string,
): string {
  const left = scale.left[index];
  const { head, toeDownM } = view.element;
  const middle = scale.x(index, 0);
  const side = freeSide(parts, panel);
  const toe = toeDownM ?? parts.rows.at(-1)?.downM ?? scale.toDownM;
  const clipped = tag(
    "g",
    { "clip-path": `url(#${key}-panel-${index})` },
    ...unreadStretches(view, parts).map(([from, to]) =>
      hatch({ left, top: scale.y(from), right: left + PANEL_WIDTH, bottom: scale.y(to) }),
    ),
    line(middle, scale.y(head.down), middle, scale.y(toe), LINE.design),
    ...namedLevels(view).map((level) => levelMark(scale, index, side, level)),
    drawBand(view, parts, scale, panel, index),
    drawSectionAllowances(view, parts, scale, panel, index),
    index === 0 ? levelNames(view, scale, side) : "",
    drawAsBuilt(parts, scale, panel, index),
    drawErrorBars(view, parts, places, scale, panel, index),
    ...places.map(({ position, row, alsoWorst }) =>
      positionMarker(position, scale.x(index, panel.offsetM(row)), scale.y(row.downM), alsoWorst),
    ),
  );
  return tag("g", { "data-panel": index }, clipped, panelFrame(view, scale, panel, index));
}

function panelFrame(view: ElementView, scale: SectionScale, panel: SectionPanel, index: 0 | 1): string {
  const left = scale.left[index];
  const middle = left + PANEL_WIDTH / 2;
  // no value at the very edge, where it would run into that of the other panel
  const ticks = scaleLinear([-0.88 * scale.halfM, 0.88 * scale.halfM], [0, 1]).ticks(OFFSET_TICKS);
  const unit = offsetUnit(scale.halfM, ticks[1]! - ticks[0]!);
  const small = { "font-size": SIZE.label };
  return [
    tag("rect", {
      x: left,
      y: scale.top,
      width: PANEL_WIDTH,
      height: scale.bottom - scale.top,
      ...LINE.frame,
    }),
    text(left, scale.top - 7, `← ${panel.left}`, small),
    text(middle, scale.top - 7, panel.title, { "text-anchor": "middle", "font-weight": "bold" }),
    text(left + PANEL_WIDTH, scale.top - 7, `${panel.right} →`, { ...small, "text-anchor": "end" }),
    ...ticks.flatMap((value) => [
      line(scale.x(index, value), scale.bottom, scale.x(index, value), scale.bottom + 4, LINE.level),
      text(scale.x(index, value), scale.bottom + 16, unit.write(value, view.language), {
        ...small,
        "text-anchor": "middle",
      }),
    ]),
    text(middle, scale.bottom + 32, `${panel.title} (${unit.name})`, { "text-anchor": "middle" }),
  ].join("");
}

/** Line at a level with the triangle that marks levels on drawings. */
function levelMark(
  scale: SectionScale,
  index: 0 | 1,
  side: "left" | "right",
  { word, downM }: NamedLevel,
): string {
  const y = scale.y(downM);
  const left = scale.left[index];
  const tip = side === "left" ? left + 10 : left + PANEL_WIDTH - 10;
  const triangle = [
    [tip, y],
    [tip - 4, y - 7],
    [tip + 4, y - 7],
  ] as const;
  return (
    line(left, y, left + PANEL_WIDTH, y, LINE.level) +
    polygon(triangle, { ...LINE.leader, fill: "#FFFFFF", "data-level": word })
  );
}

/** Where level names keep clear of the as-built axis. */
function freeSide(parts: AxisParts, panel: SectionPanel): "left" | "right" {
  const sum = parts.rows.reduce((total, row) => total + panel.offsetM(row), 0);
  return sum < 0 ? "right" : "left";
}

interface NamedLevel {
  readonly word: "head" | "cutoff" | "toe";
  readonly downM: number;
}

function namedLevels({ element }: ElementView): NamedLevel[] {
  const { head, cutoffDownM, toeDownM } = element;
  return [
    { word: "head", downM: head.down },
    ...(cutoffDownM === undefined ? [] : [{ word: "cutoff", downM: cutoffDownM } as const]),
    ...(toeDownM === undefined ? [] : [{ word: "toe", downM: toeDownM } as const]),
  ];
}

/** Names of the levels in the first panel, above their lines; one too close below another stands below its line. */
function levelNames(view: ElementView, scale: SectionScale, side: "left" | "right"): string {
  const edge = side === "left" ? scale.left[0] + 18 : scale.left[0] + PANEL_WIDTH - 18;
  let lastY = Number.NEGATIVE_INFINITY;
  const drawn = namedLevels(view).map(({ word, downM }) => {
    const above = scale.y(downM) - 3;
    const y = above - lastY < SIZE.label + 4 ? above + SIZE.label + 3 : above;
    lastY = y;
    return text(edge, y, figureWord(word, view.language), {
      "font-size": SIZE.label,
      "text-anchor": side === "left" ? "start" : "end",
      ...HALO,
    });
  });
  return drawn.join("");
}

function drawAsBuilt(parts: AxisParts, scale: SectionScale, panel: SectionPanel, index: 0 | 1): string {
  const x = (row: AxisRow) => scale.x(index, panel.offsetM(row));
  const y = (row: AxisRow) => scale.y(row.downM);
  const path = curve<AxisRow>(x, y).digits(2);
  const stations = parts.rows.filter((row) => !row.interpolated);
  const r = stations.length > MANY_STATIONS ? 1.2 : 2.2;
  return tag(
    "g",
    { "data-part": "as-built" },
    ...parts.gaps.map((gap) => tag("path", { d: path(gap)!, ...LINE.gap })),
    ...parts.read
      .filter((stretch) => stretch.length > 1)
      .map((stretch) => tag("path", { d: path(stretch)!, ...LINE.asBuilt })),
    ...stations.map((row) =>
      circle(x(row), y(row), r, { fill: "#FFFFFF", stroke: AS_BUILT, "stroke-width": 1.1 }),
    ),
  );
}
