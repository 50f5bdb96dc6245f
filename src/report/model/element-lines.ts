import { type AxisRow, degreesFromRadians, type ElementResult, type RunResult, type SurveyRun } from "#core";
import { MISSING } from "#text";
import { say } from "../words/say.ts";
import { measuresWords, tableWords } from "../words/table-words.ts";
import type { Quantities } from "./quantities.ts";
import type { Cell, Column, RunLine, StationLine } from "./report-model.ts";

const right = (key: string, head: string, unit?: string): Column => ({
  key,
  head,
  align: "right",
  ...(unit !== undefined && { unit }),
});

/** Heads of the table of levels. */
export function stationColumns(q: Quantities): readonly Column[] {
  const { language, offsetUnit, placeUnit, depthUnit } = q;
  const head = (word: keyof typeof tableWords) => say(tableWords[word], language);
  return [
    right("depth", head("depth"), depthUnit),
    right("level", head("level"), placeUnit),
    right("offsetEast", head("offsetEast"), offsetUnit),
    right("offsetNorth", head("offsetNorth"), offsetUnit),
    right("along", head("along"), offsetUnit),
    right("across", head("across"), offsetUnit),
    right("offset", head("offset"), offsetUnit),
    right("bearing", head("bearing")),
    right("u95", head("u95"), offsetUnit),
  ];
}

/** The as-built axis, level by level. */
export function stationLines(result: ElementResult, q: Quantities): readonly StationLine[] {
  return result.axis.map((row, i) => ({
    interpolated: row.interpolated,
    cells: [
      mark(q.depth(row.depthM), row.interpolated),
      q.level(row.downM),
      q.offset(row.offsetEastM),
      q.offset(row.offsetNorthM),
      q.offset(row.alongM),
      q.offset(row.acrossM),
      q.offset(row.offsetM),
      row.offsetM > 0 ? q.bearing(Math.atan2(row.offsetEastM, row.offsetNorthM)) : { text: MISSING },
      q.offset(result.uncertainty?.ellipses[i]?.u95M ?? Number.NaN),
    ],
  }));
}

const mark = (cell: Cell, interpolated: boolean): Cell =>
  interpolated ? { ...cell, text: `* ${cell.text}` } : cell;

/** Heads of the table of places. */
export function placeColumns(q: Quantities): readonly Column[] {
  const head = (word: keyof typeof tableWords) => say(tableWords[word], q.language);
  return [
    { key: "place", head: head("place"), align: "left" },
    right("level", head("level"), q.placeUnit),
    right("easting", head("easting"), q.placeUnit),
    right("northing", head("northing"), q.placeUnit),
    right("offset", head("offset"), q.offsetUnit),
    right("u95", head("u95"), q.offsetUnit),
  ];
}

/** Coordinates of the places that are asked for first: highest, cut-off, lowest, largest offset. */
export function placeLines(
  result: ElementResult,
  cutoffDownM: number | undefined,
  q: Quantities,
): readonly (readonly Cell[])[] {
  const { axis } = result;
  if (axis.length === 0) return [];
  const worst = axis.reduce((a, b) => (b.offsetM > a.offsetM ? b : a));
  const cutoff = cutoffDownM === undefined ? undefined : axis.find((row) => row.downM === cutoffDownM);
  const places: readonly [keyof typeof tableWords, AxisRow | undefined][] = [
    ["headRow", axis[0]],
    ["cutoffRow", cutoff],
    ["lowestRow", axis.at(-1)],
    ["worstRow", worst],
  ];
  return places.flatMap(([word, row]) =>
    row === undefined
      ? []
      : [
          [
            { text: say(tableWords[word], q.language) },
            q.level(row.downM),
            q.place(row.eastM),
            q.place(row.northM),
            q.offset(row.offsetM),
            q.offset(result.uncertainty?.ellipses[axis.indexOf(row)]?.u95M ?? Number.NaN),
          ],
        ],
  );
}

/** A run, written out. */
export function runLine(run: SurveyRun, result: RunResult | undefined, q: Quantities): RunLine {
  const { language } = q;
  const closure = result?.steps.find(({ step }) => step === "heading-closure")?.effect;
  const number = (value: number | string | undefined) => (typeof value === "number" ? value : Number.NaN);
  const { path } = result ?? {};
  const state = path === undefined ? "failed" : result?.judgeable ? "usable" : "notJudged";
  return {
    id: run.id,
    elementId: run.elementId,
    tube: run.tubeId ?? MISSING,
    instrument: run.instrumentId,
    operator: run.operator ?? MISSING,
    started:
      run.startedAt === undefined
        ? MISSING
        : run.startedAt.replace("T", " ").replace(/:\d\d(\.\d+)?(?=Z|[+-])/, ""),
    measures: say(measuresWords[run.measures] ?? { en: run.measures, de: run.measures }, language),
    stations: q.count(path?.count ?? Number.NaN),
    depth: q.depth(path === undefined ? Number.NaN : path.depthM[path.count - 1]!),
    misclosure: q.degrees(number(closure?.["misclosure_deg"])),
    misclosureLimit: q.degrees(number(closure?.["limit_deg"])),
    state: say(tableWords[state], language),
    file: run.file,
  };
}

/** Design rake in words. */
export function rakeText(rakeRad: number, bearingRad: number | undefined, q: Quantities): string {
  if (rakeRad === 0) return say(tableWords.plumb, q.language);
  const rake = `${q.degrees(degreesFromRadians(rakeRad)).text}°`;
  return bearingRad === undefined
    ? rake
    : say(tableWords.rakeTowards, q.language, { rake, bearing: q.bearing(bearingRad).text });
}
