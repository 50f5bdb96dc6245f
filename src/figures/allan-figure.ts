import type { AllanRecord, Language, ReadOff } from "#core";
import { degreesFromRadians, SECONDS_PER_HOUR } from "#core";
import { figureWord, formatCoverage, formatNumber, formatQuantity, formatTwoDigits } from "#text";
import { type AllanScale, allanScale } from "./allan-scale.ts";
import { drawKey, drawNotes, type KeyEntry, lineEntry } from "./key-column.ts";
import { BODY_TOP, drawSheet, figureKey } from "./page.ts";
import { AS_BUILT, ERROR_BAR, LINE, SIZE } from "./style.ts";
import { circle, line, tag, text } from "./svg/markup.ts";
import type { CalibrationView } from "./view.ts";

const perHour = (radPerS: number): number => degreesFromRadians(radPerS) * SECONDS_PER_HOUR;
const perRootHour = (radPerRootS: number): number =>
  degreesFromRadians(radPerRootS) * Math.sqrt(SECONDS_PER_HOUR);
const perHourRootHour = (radPerS: number): number => perHour(radPerS) * Math.sqrt(SECONDS_PER_HOUR);

/** Flicker noise of size B shows as a level of sqrt(2 ln 2 / pi) B. */
const FLICKER_LEVEL = Math.sqrt((2 * Math.LN2) / Math.PI);

const TERM_LINES = {
  walk: { ...LINE.outline, "stroke-width": 1.4, "stroke-dasharray": "9 4" },
  instability: { ...LINE.outline, "stroke-width": 1.4, "stroke-dasharray": "3 3" },
  rateWalk: { ...LINE.outline, "stroke-width": 1.4, "stroke-dasharray": "9 3 2 3 2 3" },
} as const;

/** A term that was read off: its value, and the line that it makes in the drawing. */
interface Term {
  readonly line: keyof typeof TERM_LINES;
  readonly label: string;
  readonly value: string;
  /** deviation that the term alone would show, degrees per hour */
  readonly deviation: (averagingTimeS: number) => number;
}

/**
 * Allan deviation of a gyro at rest against averaging time, as SVG text: both scales logarithmic, each point with its confidence
 * interval, and the lines of what was read off.
 *
 * @returns undefined for a calibration that holds no such record.
 *
 * Frame: probe axis; degrees per hour, seconds.
 * Source: rule B3; names and slopes of the terms as in IEEE Std 952 (from memory).
 */
export function allanFigure(view: CalibrationView): string | undefined {
  const { calibration, jobName, language } = view;
  if (calibration.kind !== "gyro-zero" || calibration.allan === undefined) return undefined;
  const { allan } = calibration;
  const scale = allanScale(allan.curve, perHour);
  const terms = termsOf(allan, language);
  const key = drawKey(keyEntries(allan, terms, language), BODY_TOP + 18);
  const confidence = formatCoverage(allan.confidence, language);
  const note = figureWord("allanNote", language, { confidence });
  const notes = drawNotes([note], key.bottom + 2);
  const subtitle = figureWord("allanOf", language, {
    instrument: calibration.instrumentId,
    time: formatQuantity(allan.seconds, "s", language),
  });
  const clipId = figureKey("allan-frame", calibration.id);
  return drawSheet(
    { subjectId: calibration.id, jobName, captions: undefined },
    {
      figureId: "allan",
      title: figureWord("allan", language),
      subtitle,
      description: [`${subtitle}.`, ...terms.map(({ label, value }) => `${label}: ${value}.`), note].join(
        " ",
      ),
      body: drawCurve(allan, terms, scale, language, clipId) + key.markup + notes.markup,
      bodyBottom: Math.max(scale.bottom + 44, notes.bottom),
    },
  );
}

function termsOf(allan: AllanRecord, language: Language): readonly Term[] {
  const { walk, instability, rateWalk } = allan;
  const write = (
    term: ReadOff,
    unit: Parameters<typeof formatTwoDigits>[1],
    convert: (si: number) => number,
  ) =>
    [
      formatTwoDigits(convert(term.value), unit, language),
      ` (${[term.lower, term.upper].map((end) => formatTwoDigits(convert(end), unit, language)).join(" … ")})`,
    ].join("");
  return [
    {
      line: "walk",
      label: figureWord("allanWalk", language),
      value: write(walk, "deg/sqrt(h)", perRootHour),
      deviation: (time) => perHour(walk.value / Math.sqrt(time)),
    },
    {
      line: "instability",
      label: figureWord(instability.isReached ? "allanInstability" : "allanInstabilityAtMost", language),
      value: write(instability, "deg/h", perHour),
      deviation: () => perHour(FLICKER_LEVEL * instability.value),
    },
    ...(rateWalk === undefined
      ? []
      : [
          {
            line: "rateWalk" as const,
            label: figureWord("allanRateWalk", language),
            value: write(rateWalk, "deg/h/sqrt(h)", perHourRootHour),
            deviation: (time: number) => perHour(rateWalk.value * Math.sqrt(time / 3)),
          },
        ]),
  ];
}

function keyEntries(allan: AllanRecord, terms: readonly Term[], language: Language): readonly KeyEntry[] {
  const point: KeyEntry = {
    label: figureWord("allanPoint", language, {
      confidence: formatCoverage(allan.confidence, language),
    }),
    details: [],
    symbol: (x, y) => upright(x, y - 9, y + 9) + marker(x, y),
  };
  return [
    point,
    ...terms.map(({ label, value, line: style }) => lineEntry(label, TERM_LINES[style], [value])),
  ];
}

const marker = (x: number, y: number): string =>
  circle(x, y, 2.6, { fill: "#FFFFFF", stroke: AS_BUILT, "stroke-width": 1.6 });

/** An error bar that stands upright. */
function upright(x: number, top: number, bottom: number): string {
  return (
    line(x, top, x, bottom, ERROR_BAR) +
    line(x - 3, top, x + 3, top, ERROR_BAR) +
    line(x - 3, bottom, x + 3, bottom, ERROR_BAR)
  );
}

function drawCurve(
  { curve }: AllanRecord,
  terms: readonly Term[],
  scale: AllanScale,
  language: Language,
  clipId: string,
): string {
  const places = Array.from({ length: curve.count }, (_, i) => i).filter((i) => curve.deviation[i]! > 0);
  const x = (i: number) => scale.x(curve.averagingTimeS[i]!);
  const y = (radPerS: number) => scale.y(perHour(radPerS));
  const bars = places
    .filter((i) => curve.lower[i]! > 0 && Number.isFinite(curve.upper[i]!))
    .map((i) => upright(x(i), y(curve.upper[i]!), y(curve.lower[i]!)));
  const path = places.map(
    (i, n) => `${n === 0 ? "M" : "L"}${x(i).toFixed(2)},${y(curve.deviation[i]!).toFixed(2)}`,
  );
  const lines = terms.map(({ line: style, deviation }) => {
    const [from, to] = scale.times;
    return line(scale.x(from), scale.y(deviation(from)), scale.x(to), scale.y(deviation(to)), {
      ...TERM_LINES[style],
      "data-term": style,
    });
  });
  return tag(
    "g",
    { "data-part": "allan" },
    tag(
      "defs",
      {},
      tag(
        "clipPath",
        { id: clipId },
        tag("rect", {
          x: scale.left,
          y: scale.top,
          width: scale.right - scale.left,
          height: scale.bottom - scale.top,
        }),
      ),
    ),
    drawAxes(scale, language),
    tag(
      "g",
      { "clip-path": `url(#${clipId})` },
      ...lines,
      ...bars,
      tag("path", { d: path.join(""), ...LINE.asBuilt }),
    ),
    ...places.map((i) => marker(x(i), y(curve.deviation[i]!))),
  );
}

function drawAxes(scale: AllanScale, language: Language): string {
  const small = { "font-size": SIZE.label };
  const write = (value: number) =>
    formatNumber(value, Math.max(0, -Math.floor(Math.log10(value) + 1e-9)), language);
  return tag(
    "g",
    { "data-part": "axes" },
    ...scale.timeTicks.flatMap((time) => [
      line(scale.x(time), scale.top, scale.x(time), scale.bottom + 4, LINE.grid),
      text(scale.x(time), scale.bottom + 16, write(time), { ...small, "text-anchor": "middle" }),
    ]),
    ...scale.deviationTicks.flatMap((deviation) => [
      line(scale.left - 4, scale.y(deviation), scale.right, scale.y(deviation), LINE.grid),
      text(scale.left - 7, scale.y(deviation) + 3.8, write(deviation), { ...small, "text-anchor": "end" }),
    ]),
    tag("rect", {
      x: scale.left,
      y: scale.top,
      width: scale.right - scale.left,
      height: scale.bottom - scale.top,
      ...LINE.frame,
    }),
    text((scale.left + scale.right) / 2, scale.bottom + 34, `${figureWord("averagingTime", language)} (s)`, {
      "text-anchor": "middle",
    }),
    text(0, 0, `${figureWord("allan", language)} (°/h)`, {
      "text-anchor": "middle",
      transform: `translate(24 ${(scale.top + scale.bottom) / 2}) rotate(-90)`,
    }),
  );
}
