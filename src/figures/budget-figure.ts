import { figureWord, formatLevel, formatOffset, formatQuantity } from "#text";
import { axisParts } from "./axis-parts.ts";
import { type BudgetColumn, type BudgetRow, budgetRows, shownColumns } from "./budget-rows.ts";
import { halvingSentence } from "./budget-words.ts";
import { describeElement, describeFigure } from "./describe.ts";
import { BODY_TOP, drawPage, MARGIN, PAGE_WIDTH } from "./page.ts";
import { markedPlaces } from "./places.ts";
import { AS_BUILT, HALO, INK, LINE, SIZE } from "./style.ts";
import { line, tag, text } from "./svg/markup.ts";
import { fitText, wrapText } from "./svg/text-width.ts";
import type { ElementView } from "./view.ts";

const BAR_LEFT = 262;
const BAR_RIGHT = 560;
const BAR_HEIGHT = 9;
const ROW_GAP = 9;
const LINE_HEIGHT = 13.5;
const TOP = BODY_TOP + 30;
/** The bar of the first place is solid, that of the second open, so that one ink tells them apart. */
const FILLS = [AS_BUILT, "#FFFFFF"] as const;

/**
 * What the uncertainty of one element is made of, as SVG text: share of each source in the variance at the toe and at the worst level.
 *
 * Each source with its standard value, where that comes from, and the standard offset that it alone would leave. Below: which single source,
 * brought down to what value, would halve the expanded uncertainty. Sources too small to matter are one row.
 *
 * Frame: along and across together, square to the design axis.
 * Source: rule E2.
 */
export function budgetFigure(view: ElementView): string {
  const columns = shownColumns(view);
  const rows = budgetRows(view, columns);
  const body = columns.length === 0 ? nothingKnown(view) : drawBudget(view, columns, rows);
  const halving = columns.map((column) => halvingSentence(view, column));
  const note = figureWord(columns.length === 0 ? "budgetUnknown" : "budgetNote", view.language);
  return drawPage(view, {
    figureId: "budget",
    title: figureWord("budget", view.language),
    subtitle: describeElement(view),
    description: describeFigure(view, markedPlaces(view, axisParts(view)), [note, ...halving].join(" ")),
    body: body.markup,
    bodyBottom: body.bottom,
  });
}

interface Drawn {
  readonly markup: string;
  readonly bottom: number;
}

function nothingKnown(view: ElementView): Drawn {
  const content = figureWord("budgetUnknown", view.language);
  return {
    markup: text(PAGE_WIDTH / 2, TOP + 20, content, { "text-anchor": "middle", "font-weight": "bold" }),
    bottom: TOP + 44,
  };
}

function drawBudget(view: ElementView, columns: readonly BudgetColumn[], rows: readonly BudgetRow[]): Drawn {
  const rowHeight = Math.max(2 * LINE_HEIGHT, columns.length * (BAR_HEIGHT + 4)) + ROW_GAP;
  const bottom = TOP + rows.length * rowHeight;
  const legend = drawLegend(view, columns, bottom + 26);
  const words = drawWords(view, columns, legend.bottom);
  const end = axisEnd(rows);
  const x = (share: number) => BAR_LEFT + (share / end) * (BAR_RIGHT - BAR_LEFT);
  const grid = [0, 0.25, 0.5, 0.75, 1]
    .map((part) => part * end)
    .flatMap((share) => [
      line(x(share), TOP - 6, x(share), bottom, share === 0 ? LINE.level : LINE.grid),
      text(x(share), TOP - 12, formatQuantity(100 * share, "%", view.language, { decimals: 0 }), {
        "font-size": SIZE.label,
        "text-anchor": "middle",
      }),
    ]);
  const drawn = rows.map((row, i) => drawRow(view, row, TOP + i * rowHeight, x));
  return {
    markup: tag("g", { "data-part": "budget" }, ...grid, ...drawn) + legend.markup + words.markup,
    bottom: words.bottom,
  };
}

/** The axis ends where the largest bar has room, at a round share. */
function axisEnd(rows: readonly BudgetRow[]): number {
  const largest = Math.max(0, ...rows.flatMap(({ parts }) => parts.map(({ share }) => share)));
  return [0.2, 0.4, 0.6, 0.8].find((end) => largest <= end) ?? 1;
}

function drawRow(view: ElementView, row: BudgetRow, top: number, x: (share: number) => number): string {
  const small = { "font-size": SIZE.label };
  const room = BAR_LEFT - MARGIN - 12;
  const bars = row.parts.map(({ share, standardM }, i) => {
    const y = (row.parts.length === 1 ? top + BAR_HEIGHT / 2 : top) + i * (BAR_HEIGHT + 4);
    const percent = formatQuantity(100 * share, "%", view.language, { decimals: 1 });
    const alone = formatQuantity(1000 * standardM, "mm", view.language, { decimals: 1 });
    return (
      tag("rect", {
        x: BAR_LEFT,
        y,
        width: Math.max(0, x(share) - BAR_LEFT),
        height: BAR_HEIGHT,
        fill: FILLS[i],
        stroke: INK,
        "stroke-width": 0.9,
        "data-share": share.toFixed(4),
      }) + text(x(share) + 6, y + BAR_HEIGHT - 0.5, `${percent} · ${alone}`, { ...small, ...HALO })
    );
  });
  return tag(
    "g",
    { "data-source": row.id },
    text(MARGIN, top + 9, fitText(row.name, SIZE.label, room, true), { ...small, "font-weight": "bold" }),
    text(MARGIN, top + 9 + LINE_HEIGHT, fitText(row.detail, SIZE.label, room), small),
    ...bars,
  );
}

/** Which bar is which place, and what all sources make together there. */
function drawLegend(view: ElementView, columns: readonly BudgetColumn[], top: number): Drawn {
  const { language } = view;
  const drawn = columns.map(({ name, downM, standardM, u95M }, i) => {
    const y = top + i * (LINE_HEIGHT + 4);
    const content = figureWord("budgetTogether", language, {
      place: name,
      level: formatLevel(-downM, language),
      standard: formatQuantity(1000 * standardM, "mm", language, { decimals: 1 }),
      u95: formatOffset(u95M, language),
    });
    return (
      tag("rect", {
        x: MARGIN,
        y: y - BAR_HEIGHT,
        width: 28,
        height: BAR_HEIGHT,
        fill: FILLS[i],
        stroke: INK,
        "stroke-width": 0.9,
      }) + text(MARGIN + 38, y, fitText(content, SIZE.body, PAGE_WIDTH - 2 * MARGIN - 38))
    );
  });
  return {
    markup: tag("g", { "data-part": "legend" }, ...drawn),
    bottom: top + columns.length * (LINE_HEIGHT + 4),
  };
}

/** What would halve it, place by place, and how to read the bars. */
function drawWords(view: ElementView, columns: readonly BudgetColumn[], top: number): Drawn {
  const room = PAGE_WIDTH - 2 * MARGIN;
  const sentences = [
    ...new Set(columns.map((column) => halvingSentence(view, column))),
    figureWord("budgetNote", view.language),
  ];
  let y = top + 6;
  const drawn: string[] = [];
  for (const sentence of sentences) {
    for (const content of wrapText(sentence, SIZE.body, room)) {
      drawn.push(text(MARGIN, y, content));
      y += LINE_HEIGHT + 1.5;
    }
    y += 4;
  }
  return { markup: tag("g", { "data-part": "halving" }, ...drawn), bottom: y - 6 };
}
