import { designAxes, designDirection } from "../elements/design-axis.ts";
import type { DesignElement } from "../elements/element.ts";
import { dot, type NorthEastDown, subtract } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { checkAgainstDeclaration, exactlyOne, givenKeys, wordOf } from "./check-request.ts";
import type {
  Criterion,
  CriterionRequest,
  JudgedAxis,
  Language,
  Measured,
  NotMeasured,
  OffsetForm,
} from "./criterion.ts";
import { type Lean, leanOfChord, worstChord, worstLean, worstSegment } from "./lean.ts";
import { LEAN_KEYS, leanParameters, ratioFrom } from "./lean-limit.ts";
import { stepRange } from "./plan-position-wording.ts";
import { type DepthRange, faultOfAxis, isPartlyRead, readRange } from "./read-range.ts";
import { faultOfSteps, type Row, stepColumns, stepFor } from "./steps.ts";
import { metresWords, oneIn } from "./wording.ts";

const DEFAULT_MIN_CHORD_M = 1;

/** Lean of the as-built axis from the design axis: of a chord from the commencing surface, or of its worst piece. */
export const verticality: Criterion = {
  id: "verticality",
  revision: 1,
  unit: "m/m",
  parameters: [
    ...leanParameters,
    {
      key: "segment_m",
      unit: "m",
      min: 0.01,
      max: 1000,
      required: false,
      text: {
        en: "length of the pieces; without it from station to station",
        de: "Länge der Abschnitte; ohne Angabe von Messpunkt zu Messpunkt",
      },
    },
    {
      key: "min_chord_m",
      unit: "m",
      min: 0,
      max: 1000,
      required: false,
      text: { en: "shortest chord that counts", de: "kürzeste Sehne, die zählt" },
    },
    {
      key: "over_first_m",
      unit: "m",
      min: 0.01,
      max: 1000,
      required: false,
      text: {
        en: "only this length below the commencing surface counts",
        de: "nur diese Länge unter der Arbeitsebene zählt",
      },
    },
  ],
  choices: [
    {
      key: "measured",
      values: ["chord", "segment"],
      text: {
        en: "chord from the commencing surface, or worst piece",
        de: "Sehne ab Arbeitsebene oder schlechtester Abschnitt",
      },
    },
    {
      key: "to",
      values: ["toe", "every-level"],
      text: { en: "where the chord ends", de: "wo die Sehne endet" },
    },
    {
      key: "component",
      values: ["any", "along", "across", "each"],
      text: {
        en: "lean in any direction, along, across, or the worse of along and across",
        de: "Neigung in jeder Richtung, längs, quer oder die schlechtere von längs und quer",
      },
    },
  ],
  tables: [
    {
      key: "steps",
      columns: [...stepColumns, ...leanParameters],
      text: { en: "allowed lean in steps", de: "zulässige Neigung in Stufen" },
    },
  ],
  source: "Rule shapes of the standards listed in docs/method/sets.md",
  text: {
    en: {
      title: "Verticality",
      explanation:
        "Tangent of the angle between the design axis and the as-built axis, along a chord from the commencing surface or the worst piece of it.",
    },
    de: {
      title: "Lotrechte",
      explanation:
        "Tangens des Winkels zwischen Sollachse und gebauter Achse, über eine Sehne ab der Arbeitsebene oder den schlechtesten Abschnitt.",
    },
  },
  check,
  measure,
  allowanceM: (element, downM, request) => {
    const limit = limitFor(element, request);
    return typeof limit === "number"
      ? (limit * Math.max(0, downM - element.head.down)) / Math.cos(element.rakeRad)
      : Number.NaN;
  },
  describe,
};

function check(request: CriterionRequest) {
  const faults = checkAgainstDeclaration(verticality, request);
  const given = givenKeys(request);
  faults.push(...exactlyOne(given, [...LEAN_KEYS, "steps"]));
  const steps = request.tables["steps"];
  if (steps !== undefined) {
    faults.push(...faultOfSteps("steps", steps));
    for (const [i, row] of steps.entries())
      for (const fault of exactlyOne(Object.keys(row), LEAN_KEYS))
        faults.push({ ...fault, field: `steps[${i}].${fault.field}` });
  }
  const onlyWith = (key: string, choice: string, value: string) => {
    if (given.includes(key) && wordOf(verticality, request, choice) !== value)
      faults.push({
        field: key,
        expected: `${choice} "${value}" beside it`,
        found: wordOf(verticality, request, choice),
      });
  };
  onlyWith("segment_m", "measured", "segment");
  onlyWith("to", "measured", "chord");
  onlyWith("min_chord_m", "to", "every-level");
  return faults;
}

/** The lean allowed for an element, m/m. */
function limitFor(element: DesignElement, request: CriterionRequest): number | NotMeasured {
  const rows = request.tables["steps"];
  const row: Row | NotMeasured = rows === undefined ? request.numbers : stepFor(rows, element);
  if ("reason" in row) return row as NotMeasured;
  return ratioFrom(row) ?? { reason: "criteria.no-limit" };
}

function measure(axis: JudgedAxis, request: CriterionRequest): Measured | NotMeasured {
  const fault = faultOfAxis(axis);
  if (fault !== undefined) return fault;
  const limit = limitFor(axis.element, request);
  if (typeof limit !== "number") return limit;
  const read = readRange(axis);
  if (!(read.toM > read.fromM)) return { reason: "criteria.nothing-read" };

  const firstM = request.numbers["over_first_m"];
  const endM = firstM === undefined ? read.toM : read.fromM + firstM;
  if (!(endM <= read.toM))
    return {
      reason: "criteria.too-short",
      values: { read_m: read.toM - read.fromM, needed_m: firstM ?? Number.NaN },
    };
  const lean = leanOf(axis, request, { fromM: read.fromM, toM: endM });
  if ("reason" in lean) return lean;
  if (!Number.isFinite(lean.ratio))
    return { reason: "criteria.not-downward", values: { level_m: -lean.atDownM } };
  const partial = firstM === undefined ? isPartlyRead(axis) : !axis.reachesHead;
  const form = formOf(axis, request, { fromM: read.fromM, toM: endM }, limit);
  return {
    value: lean.ratio,
    limit,
    atDownM: lean.atDownM,
    atDepthM: lean.atDepthM,
    partial,
    ...(form === undefined ? {} : { form }),
  };
}

/** One chord against the design direction is the drift of its lower end, held against the limit times its length. */
function formOf(
  { path, element }: JudgedAxis,
  request: CriterionRequest,
  range: DepthRange,
  limit: number,
): OffsetForm | undefined {
  const oneChord =
    wordOf(verticality, request, "measured") === "chord" &&
    wordOf(verticality, request, "to") === "toe" &&
    wordOf(verticality, request, "component") === "any";
  if (!oneChord) return undefined;
  const axes = designAxes(element);
  const lower = interpolatePath(path, range.toM).position;
  const upper = interpolatePath(path, range.fromM).position;
  const chord = subtract(lower, upper);
  return {
    fromDepthM: range.fromM,
    atDepthM: range.toM,
    axes,
    alongM: dot(chord, axes.along),
    acrossM: dot(chord, axes.across),
    component: "both",
    limitM: limit * dot(chord, axes.direction),
  };
}

function leanOf(axis: JudgedAxis, request: CriterionRequest, range: DepthRange): Lean | NotMeasured {
  const axes = designAxes(axis.element);
  const sides = {
    any: [undefined],
    along: [axes.along],
    across: [axes.across],
    each: [axes.along, axes.across],
  }[wordOf(verticality, request, "component")] ?? [undefined];
  const found = sides.flatMap((side) => leanTo(axis, request, range, side) ?? []);
  const neededM = shortestPieceM(request);
  return (
    worstLean(found) ?? {
      reason: "criteria.too-short",
      values: { read_m: range.toM - range.fromM, needed_m: neededM },
    }
  );
}

const shortestPieceM = ({ numbers }: CriterionRequest): number =>
  numbers["segment_m"] ?? numbers["min_chord_m"] ?? DEFAULT_MIN_CHORD_M;

function leanTo(
  { path, element }: JudgedAxis,
  request: CriterionRequest,
  range: DepthRange,
  side: NorthEastDown | undefined,
): Lean | undefined {
  const direction = designDirection(element);
  if (wordOf(verticality, request, "measured") === "segment")
    return worstSegment(path, direction, range, request.numbers["segment_m"], side);
  if (wordOf(verticality, request, "to") === "toe") return leanOfChord(path, direction, range, side);
  return worstChord(path, direction, range, shortestPieceM(request), side);
}

const COMPONENT_WORDS: Readonly<Record<Language, Readonly<Record<string, string>>>> = {
  en: { along: " along", across: " across", each: " along and across, each" },
  de: { along: " längs", across: " quer", each: " längs und quer, jeweils" },
};

function describe(request: CriterionRequest, language: Language): string {
  const english = language === "en";
  const { numbers, tables } = request;
  const single = ratioFrom(numbers);
  const limits = [
    ...(single === undefined ? [] : [oneIn(single, language)]),
    ...(tables["steps"] ?? []).map(
      (row) => `${oneIn(ratioFrom(row) ?? Number.NaN, language)} ${stepRange(row, language)}`,
    ),
  ].join("; ");
  const from = english ? "from the design axis" : "gegen die Sollachse";
  const first = numbers["over_first_m"];
  const over =
    first === undefined
      ? ""
      : `${english ? ", over the first" : ", auf den ersten"} ${metresWords(first, language)}`;
  return `${limits} ${from}${COMPONENT_WORDS[language][wordOf(verticality, request, "component")] ?? ""}, ${measuredWords(request, language)}${over}`;
}

function measuredWords(request: CriterionRequest, language: Language): string {
  const english = language === "en";
  const { numbers } = request;
  if (wordOf(verticality, request, "measured") === "segment") {
    const length = numbers["segment_m"];
    if (length === undefined)
      return english ? "worst piece between stations" : "schlechtester Abschnitt zwischen Messpunkten";
    const words = metresWords(length, language);
    return english ? `worst piece of ${words}` : `schlechtester Abschnitt von ${words}`;
  }
  if (wordOf(verticality, request, "to") === "toe")
    return english
      ? "chord from the commencing surface to the lowest station"
      : "Sehne von der Arbeitsebene zum untersten Messpunkt";
  const shortest = metresWords(numbers["min_chord_m"] ?? DEFAULT_MIN_CHORD_M, language);
  return english
    ? `worst chord from the commencing surface, of ${shortest} or more`
    : `schlechteste Sehne ab der Arbeitsebene, ab ${shortest} Länge`;
}
