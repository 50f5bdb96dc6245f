import { angleBetween } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { radiansFromDegrees } from "../units/quantity.ts";
import { atLeastOne, checkAgainstDeclaration, givenKeys } from "./check-request.ts";
import type {
  Criterion,
  CriterionRequest,
  JudgedAxis,
  Language,
  Measured,
  NotMeasured,
} from "./criterion.ts";
import { segments } from "./lean.ts";
import { faultOfAxis, isPartlyRead, readRange } from "./read-range.ts";
import { degreesWords, metresWords } from "./wording.ts";
import { worstOf } from "./worst.ts";

/** How sharply the axis bends: smallest radius between stations, or change of direction over a length. */
export const curvature: Criterion = {
  id: "curvature",
  revision: 1,
  unit: "1/m",
  parameters: [
    {
      key: "min_bend_radius_m",
      unit: "m",
      min: 0.01,
      max: 1_000_000,
      required: false,
      text: { en: "smallest allowed bend radius", de: "kleinster zulässiger Biegeradius" },
    },
    {
      key: "dogleg_limit_deg",
      unit: "deg",
      min: 0,
      max: 180,
      required: false,
      text: { en: "allowed change of direction", de: "zulässige Richtungsänderung" },
    },
    {
      key: "dogleg_length_m",
      unit: "m",
      min: 0.01,
      max: 10_000,
      required: false,
      text: { en: "length over which it is counted", de: "Länge, über die sie gezählt wird" },
    },
  ],
  choices: [],
  tables: [],
  source: "Geometry of the circular arc; rule shape of EN 14199 (from memory)",
  text: {
    en: {
      title: "Curvature",
      explanation:
        "Change of direction of the axis per metre, from the directions at the stations: between neighbours, or over a stated length.",
    },
    de: {
      title: "Krümmung",
      explanation:
        "Richtungsänderung der Achse je Meter, aus den Richtungen an den Messpunkten: zwischen Nachbarn oder über eine feste Länge.",
    },
  },
  check,
  measure,
  describe,
};

function check(request: CriterionRequest) {
  const faults = checkAgainstDeclaration(curvature, request);
  const given = givenKeys(request);
  faults.push(...atLeastOne(given, ["min_bend_radius_m", "dogleg_limit_deg"]));
  if (given.includes("dogleg_limit_deg") !== given.includes("dogleg_length_m"))
    faults.push({
      field: given.includes("dogleg_limit_deg") ? "dogleg_length_m" : "dogleg_limit_deg",
      expected: "dogleg_limit_deg and dogleg_length_m together",
      found: "one of them",
    });
  return faults;
}

function measure(axis: JudgedAxis, request: CriterionRequest): Measured | NotMeasured {
  const fault = faultOfAxis(axis);
  if (fault !== undefined) return fault;
  const {
    min_bend_radius_m: radiusM,
    dogleg_limit_deg: limitDeg,
    dogleg_length_m: lengthM,
  } = request.numbers;
  const candidates: Measured[] = [];
  if (radiusM !== undefined) candidates.push(...bends(axis, 1 / radiusM, undefined));
  if (limitDeg !== undefined && lengthM !== undefined) {
    const over = bends(axis, radiansFromDegrees(limitDeg) / lengthM, lengthM);
    if (over.length === 0) {
      const { fromM, toM } = readRange(axis);
      return { reason: "criteria.too-short", values: { read_m: toM - fromM, needed_m: lengthM } };
    }
    candidates.push(...over);
  }
  const worst = worstOf(candidates);
  if (worst === undefined) return { reason: "criteria.nothing-read" };
  return Number.isFinite(worst.value) ? worst : { reason: "criteria.not-a-number" };
}

/** Mean curvature of every piece of the axis, 1/m. */
function bends(axis: JudgedAxis, limit: number, lengthM: number | undefined): Measured[] {
  const { path } = axis;
  const range = readRange(axis);
  if (!(range.toM > range.fromM)) return [];
  const partial = isPartlyRead(axis);
  return segments(path, range, lengthM).map(({ fromM, toM }) => {
    const upper = interpolatePath(path, fromM);
    const lower = interpolatePath(path, toM);
    const value = angleBetween(upper.tangent, lower.tangent) / (toM - fromM);
    const atDepthM = (fromM + toM) / 2;
    return { value, limit, atDownM: interpolatePath(path, atDepthM).position.down, atDepthM, partial };
  });
}

function describe(request: CriterionRequest, language: Language): string {
  const english = language === "en";
  const {
    min_bend_radius_m: radiusM,
    dogleg_limit_deg: limitDeg,
    dogleg_length_m: lengthM,
  } = request.numbers;
  const parts: string[] = [];
  if (radiusM !== undefined) {
    const words = metresWords(radiusM, language);
    parts.push(
      english
        ? `bend radius ${words} or more between stations`
        : `Biegeradius zwischen Messpunkten mindestens ${words}`,
    );
  }
  if (limitDeg !== undefined && lengthM !== undefined) {
    const [angle, length] = [degreesWords(limitDeg, language), metresWords(lengthM, language)];
    parts.push(
      english
        ? `change of direction ${angle} or less over ${length}`
        : `Richtungsänderung höchstens ${angle} auf ${length}`,
    );
  }
  return parts.join("; ");
}
