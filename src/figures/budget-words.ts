import {
  type HalvingAnswer,
  type Language,
  type SourceId,
  type SourceKind,
  sourceKind,
  sourceValueFromSi,
  whatWouldHalve,
} from "#core";
import { type FigureWord, figureWord, formatProbability, formatTwoDigits } from "#text";
import { type BudgetColumn, shownColumns } from "./budget-rows.ts";
import type { ElementView } from "./view.ts";

/** So many sources that would have to go together are named; the others are counted. */
const MOST_NAMED = 6;

/** What a source is called, with a capital where it begins a line. */
export function sourceName(source: SourceId, language: Language): string {
  const name = sourceKind(source)?.text[language] ?? source;
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

const nameInside = (source: SourceId, language: Language): string =>
  sourceKind(source)?.text[language] ?? source;

/** Standard value of a source and where it comes from: "0.020° · class mems-standard"; empty where it has none of its own. */
export function standardValue(view: ElementView, source: SourceId): string {
  const entry = view.budget?.sources.find((each) => each.source === source);
  if (entry === undefined) return "";
  return `${writeStandardValue(source, entry.value, view.language)} · ${standardValueOrigin(entry.from, view.language)}`;
}

/** A standard value in the unit of its source, two digits. */
export function writeStandardValue(source: SourceId, valueSi: number, language: Language): string {
  const value = sourceValueFromSi(source, valueSi);
  const unit: SourceKind["unit"] = sourceKind(source)?.unit ?? "1";
  if (unit === "m") return formatTwoDigits(1000 * value, "mm", language);
  if (unit === "1") return formatTwoDigits(100 * value, "%", language);
  return formatTwoDigits(value, unit, language);
}

const PHRASES: Readonly<Record<string, FigureWord>> = {
  "usual site work": "fromUsual",
  "job, instrument": "fromInstrument",
  "job, run": "fromRun",
  "reference of the run": "fromReference",
  "start of the run": "fromStart",
  "azimuths of the run": "fromAzimuths",
  "magnetic model": "fromMagneticModel",
};

/** What the job's own runs show, before its degrees of freedom. */
const EVIDENCE: Readonly<Record<string, FigureWord>> = {
  "double runs of the job": "fromDoubleRuns",
  "face sums of the job": "fromFaceSums",
  "closures of the job": "fromClosures",
  "log at rest of the job": "fromRestLog",
};

/** Where a value comes from, as the budget says it: a fixed phrase, or a word before an id. */
/** Where a standard value comes from, in the words of the language. */
export function standardValueOrigin(from: string, language: Language): string {
  const phrase = PHRASES[from];
  if (phrase !== undefined) return figureWord(phrase, language);
  const evidence = /^(.+), (\d+) degrees of freedom$/.exec(from);
  const found = evidence && EVIDENCE[evidence[1]!];
  if (evidence && found) return figureWord(found, language, { freedom: evidence[2]! });
  const [word, ...id] = from.split(" ");
  if (word === "class") return figureWord("fromClass", language, { id: id.join(" ") });
  if (word === "calibration") return figureWord("fromCalibration", language, { id: id.join(" ") });
  return from;
}

/** Which single source, brought down to what value, would halve the expanded uncertainty at a place; or that none would. */
export function halvingSentence(view: ElementView, column: BudgetColumn): string {
  const { language } = view;
  const answer = whatWouldHalve(column.shares);
  const place = column.name;
  switch (answer.kind) {
    case "nothing":
      return figureWord("halvingNothing", language, { place });
    case "one-source":
      return oneSource(view, column, answer);
    case "several-sources": {
      const { together } = answer;
      const named = together.length === MOST_NAMED + 1 ? together : together.slice(0, MOST_NAMED);
      const names = named.map((source) => nameInside(source, language));
      const others = together.length - names.length;
      const more = others > 0 ? [figureWord("budgetRest", language, { count: String(others) })] : [];
      return figureWord("halvingSeveral", language, {
        place,
        largest: nameInside(answer.largest, language),
        left: formatProbability(answer.leftWithoutLargest, language),
        together: [...names, ...more].join("; "),
      });
    }
  }
}

/** What would halve the uncertainty of an element, a sentence for each place that the budget shows. */
export const halvingSentences = (view: ElementView): readonly string[] =>
  shownColumns(view).map((column) => halvingSentence(view, column));

/** By its standard value where it has one; else by the offset that it leaves. */
function oneSource(
  view: ElementView,
  column: BudgetColumn,
  { source, factor }: Extract<HalvingAnswer, { kind: "one-source" }>,
): string {
  const { language } = view;
  const entry = view.budget?.sources.find((each) => each.source === source);
  const alone = column.shares.find((each) => each.source === source)?.standardM ?? Number.NaN;
  const write = (part: number) =>
    entry === undefined
      ? formatTwoDigits(1000 * alone * part, "mm", language)
      : writeStandardValue(source, entry.value * part, language);
  return figureWord("halvingOne", language, {
    place: column.name,
    source: nameInside(source, language),
    from: write(1),
    to: write(factor),
  });
}
