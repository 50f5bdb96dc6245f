import { subtract } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { degreesFromRadians, wrapToPi } from "../units/quantity.ts";
import { atLeastOne, checkAgainstDeclaration, exactlyOne, givenKeys } from "./check-request.ts";
import type {
  Criterion,
  CriterionRequest,
  JudgedAxis,
  Language,
  Measured,
  NotMeasured,
} from "./criterion.ts";
import { LEAN_KEYS, leanParameters, ratioFrom } from "./lean-limit.ts";
import { stepRange } from "./plan-position-wording.ts";
import { faultOfAxis, isPartlyRead, readRange } from "./read-range.ts";
import { faultOfSteps, stepColumns, stepFor } from "./steps.ts";
import { degreesWords, oneIn } from "./wording.ts";
import { worstOf } from "./worst.ts";

/** Lean and bearing of a raked element, each against its own limit; the one that uses most of its limit is shown. */
export const rake: Criterion = {
  id: "rake",
  revision: 1,
  unit: "deg",
  parameters: [
    {
      key: "rake_limit_deg",
      unit: "deg",
      min: 0,
      max: 90,
      required: false,
      text: { en: "allowed difference of the rake", de: "zulässiger Unterschied der Neigung" },
    },
    {
      key: "bearing_limit_deg",
      unit: "deg",
      min: 0,
      max: 180,
      required: false,
      text: { en: "allowed difference of the bearing", de: "zulässiger Unterschied der Richtung" },
    },
  ],
  choices: [],
  tables: [
    {
      key: "steps",
      columns: [...stepColumns, ...leanParameters],
      text: {
        en: "allowed difference of the rake in steps",
        de: "zulässiger Unterschied der Neigung in Stufen",
      },
    },
  ],
  source:
    "Rule shapes of the standards listed in docs/method/sets.md; split into rake and bearing: common practice, no source",
  text: {
    en: {
      title: "Rake and bearing",
      explanation:
        "Rake and bearing of the chord from the commencing surface to the lowest station, each against its design value.",
    },
    de: {
      title: "Neigung und Richtung",
      explanation:
        "Neigung und Richtung der Sehne von der Arbeitsebene zum untersten Messpunkt, jeweils gegen den Sollwert.",
    },
  },
  check,
  measure,
  describe,
};

function check(request: CriterionRequest) {
  const faults = checkAgainstDeclaration(rake, request);
  const given = givenKeys(request);
  faults.push(...atLeastOne(given, ["rake_limit_deg", "bearing_limit_deg", "steps"]));
  const steps = request.tables["steps"];
  if (steps === undefined) return faults;
  if (given.includes("rake_limit_deg"))
    faults.push({ field: "rake_limit_deg", expected: "nothing beside steps", found: "rake_limit_deg" });
  faults.push(...faultOfSteps("steps", steps));
  for (const [i, row] of steps.entries())
    for (const fault of exactlyOne(Object.keys(row), LEAN_KEYS))
      faults.push({ ...fault, field: `steps[${i}].${fault.field}` });
  return faults;
}

function measure(axis: JudgedAxis, request: CriterionRequest): Measured | NotMeasured {
  const fault = faultOfAxis(axis);
  if (fault !== undefined) return fault;
  const { element, path } = axis;
  if (element.rakeRad === 0) return { reason: "criteria.plumb" };
  const range = readRange(axis);
  if (!(range.toM > range.fromM)) return { reason: "criteria.nothing-read" };
  const rakeLimit = rakeLimitDeg(axis, request);
  if (typeof rakeLimit === "object") return rakeLimit;

  const lower = interpolatePath(path, range.toM).position;
  const chord = subtract(lower, interpolatePath(path, range.fromM).position);
  const rakeRad = Math.atan2(Math.hypot(chord.north, chord.east), chord.down);
  const bearingRad = rakeRad === 0 ? Number.NaN : Math.atan2(chord.east, chord.north);
  const where = { atDownM: lower.down, atDepthM: range.toM, partial: isPartlyRead(axis) };
  const candidates: Measured[] = [];
  if (rakeLimit !== undefined)
    candidates.push({
      value: degreesFromRadians(Math.abs(rakeRad - element.rakeRad)),
      limit: rakeLimit,
      ...where,
      foundOn: { code: "criteria.on-rake", values: {} },
    });
  const bearingLimit = request.numbers["bearing_limit_deg"];
  if (bearingLimit !== undefined)
    candidates.push({
      value: degreesFromRadians(Math.abs(wrapToPi(bearingRad - (element.rakeBearingRad ?? Number.NaN)))),
      limit: bearingLimit,
      ...where,
      foundOn: { code: "criteria.on-bearing", values: {} },
    });
  const worst = worstOf(candidates);
  if (worst === undefined) return { reason: "criteria.no-limit" };
  return Number.isFinite(worst.value) ? worst : { reason: "criteria.no-bearing" };
}

/** The allowed difference of the rake in degrees; undefined where only the bearing has a limit. */
function rakeLimitDeg(axis: JudgedAxis, request: CriterionRequest): number | undefined | NotMeasured {
  const rows = request.tables["steps"];
  if (rows === undefined) return request.numbers["rake_limit_deg"];
  const row = stepFor(rows, axis.element);
  if ("reason" in row) return row as NotMeasured;
  const ratio = ratioFrom(row);
  return ratio === undefined ? { reason: "criteria.no-limit" } : degreesFromRadians(Math.atan(ratio));
}

function describe(request: CriterionRequest, language: Language): string {
  const english = language === "en";
  const { numbers, tables } = request;
  const parts: string[] = [];
  const rakeLimit = numbers["rake_limit_deg"];
  const bearingLimit = numbers["bearing_limit_deg"];
  const [rakeWord, bearingWord] = english ? ["rake", "bearing"] : ["Neigung", "Richtung"];
  if (rakeLimit !== undefined) parts.push(`${rakeWord} ± ${degreesWords(rakeLimit, language)}`);
  for (const row of tables["steps"] ?? [])
    parts.push(`${rakeWord} ± ${oneIn(ratioFrom(row) ?? Number.NaN, language)} ${stepRange(row, language)}`);
  if (bearingLimit !== undefined) parts.push(`${bearingWord} ± ${degreesWords(bearingLimit, language)}`);
  const chord = english
    ? "chord from the commencing surface to the lowest station"
    : "Sehne von der Arbeitsebene zum untersten Messpunkt";
  return `${parts.join("; ")}, ${chord}`;
}
