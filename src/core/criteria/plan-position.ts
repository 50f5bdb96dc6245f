import { type DesignAxes, designAxes, offsetFromLine } from "../elements/design-axis.ts";
import type { DesignElement } from "../elements/element.ts";
import type { NorthEastDown } from "../geometry/vector.ts";
import { cross, subtract, unit } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { radiansFromDegrees } from "../units/quantity.ts";
import { allowanceAt } from "./allowance.ts";
import { atLeastOne, checkAgainstDeclaration, givenKeys, wordOf } from "./check-request.ts";
import type { Criterion, CriterionRequest, JudgedAxis, Measured, NotMeasured } from "./criterion.ts";
import { choices, parameters, tables, text } from "./plan-position-parameters.ts";
import { describePlanPosition } from "./plan-position-wording.ts";
import {
  depthForLevel,
  faultOfAxis,
  isPartlyRead,
  readRange,
  restsOnUnread,
  stationDepths,
} from "./read-range.ts";
import { faultOfSteps } from "./steps.ts";
import { worstOf } from "./worst.ts";

/** Offset of the as-built axis from where it should be, at a level or at every level. */
export const planPosition: Criterion = {
  id: "plan-position",
  revision: 1,
  unit: "m",
  parameters,
  choices,
  tables,
  source: "Rule shapes of the standards listed in docs/method/sets.md",
  text,
  check,
  measure,
  allowanceM: (element, downM, request, component) => {
    if (!saysAnythingAt(element, downM, request)) return Number.NaN;
    const allowance = allowanceAt(element, downM, request);
    if ("reason" in allowance) return Number.NaN;
    const { radialM, alongM = Number.NaN, acrossM = Number.NaN } = allowance;
    if (radialM !== undefined) return radialM;
    if (component === undefined) return Math.max(alongM, acrossM);
    return component === "along" ? alongM : acrossM;
  },
  describe: describePlanPosition,
};

function check(request: CriterionRequest) {
  const faults = checkAgainstDeclaration(planPosition, request);
  const given = givenKeys(request);
  const limits = ["limit_m", "limit_per_diameter", "steps", "limit_along_m", "limit_across_m"];
  faults.push(...atLeastOne(given, limits));
  const steps = request.tables["steps"];
  if (steps !== undefined) {
    faults.push(...faultOfSteps("steps", steps));
    for (const key of ["limit_m", "limit_per_diameter"])
      if (given.includes(key)) faults.push({ field: key, expected: "nothing beside steps", found: key });
    for (const [i, row] of steps.entries())
      if (row["limit_m"] === undefined && row["per_diameter"] === undefined)
        faults.push({ field: `steps[${i}]`, expected: "limit_m or per_diameter", found: "neither" });
  }
  if (given.includes("at_level_m") && given.includes("at"))
    faults.push({ field: "at", expected: "nothing beside at_level_m", found: request.words["at"] ?? "" });
  return faults;
}

function measure(axis: JudgedAxis, request: CriterionRequest): Measured | NotMeasured {
  const fault = faultOfAxis(axis);
  if (fault !== undefined) return fault;
  const place = isForEveryLevel(request) ? everyDepth(axis) : oneDepth(axis, request);
  if ("reason" in place) return place;
  const line = referenceLine(axis, request);
  if ("reason" in line) return line;

  const candidates: Measured[] = [];
  for (const depthM of place.depthsM) {
    const found = heldAgainst(axis, request, line, depthM, place.partial);
    if ("reason" in found) return found;
    candidates.push(...found.candidates);
  }
  const worst = candidates.length === 1 ? candidates[0] : togetherIn(candidates);
  return worst === undefined || !Number.isFinite(worst.value) ? { reason: "criteria.not-a-number" } : worst;
}

/** The worst of several values, with all the offsets that must keep their limits for it to be within. */
function togetherIn(candidates: readonly Measured[]): Measured | undefined {
  const worst = worstOf(candidates);
  if (worst === undefined) return undefined;
  const { form: _, ...rest } = worst;
  const forms = candidates.flatMap(({ form }) => form ?? []);
  return forms.length === candidates.length ? { ...rest, forms } : rest;
}

interface Place {
  readonly depthsM: readonly number[];
  readonly partial: boolean;
}

function everyDepth(axis: JudgedAxis): Place | NotMeasured {
  const range = readRange(axis);
  if (!(range.toM > range.fromM)) return { reason: "criteria.nothing-read" };
  return { depthsM: stationDepths(axis.path, range), partial: isPartlyRead(axis) };
}

function oneDepth(axis: JudgedAxis, request: CriterionRequest): Place | NotMeasured {
  const downM = levelAsked(axis, request);
  if (typeof downM !== "number") return downM;
  const depthM = depthForLevel(axis, downM);
  if (!Number.isFinite(depthM)) return { reason: "criteria.level-not-read", values: { level_m: -downM } };
  return { depthsM: [depthM], partial: restsOnUnread(axis, depthM) };
}

const isForEveryLevel = (request: CriterionRequest): boolean =>
  request.numbers["at_level_m"] === undefined && wordOf(planPosition, request, "at") === "every-level";

/** The level asked for, as down = -level, metres. */
function levelAsked(axis: JudgedAxis, request: CriterionRequest): number | NotMeasured {
  const isAtToe =
    request.numbers["at_level_m"] === undefined && wordOf(planPosition, request, "at") === "toe";
  if (isAtToe && !axis.reachesToe) return { reason: "criteria.toe-not-read" };
  const level = designLevelAsked(axis.element, request);
  if (level !== undefined) return level;
  if (isAtToe) return interpolatePath(axis.path, readRange(axis).toM).position.down;
  return { reason: "criteria.no-cutoff" };
}

/** The same as the design alone has it; undefined where it does not. A cut-off above the commencing surface is looked at in that surface. */
function designLevelAsked(element: DesignElement, request: CriterionRequest): number | undefined {
  const level = request.numbers["at_level_m"];
  if (level !== undefined) return -level;
  const at = wordOf(planPosition, request, "at");
  if (at === "head") return element.head.down;
  if (at === "toe") return element.toeDownM;
  return element.cutoffDownM === undefined ? undefined : Math.max(element.cutoffDownM, element.head.down);
}

/** Levels closer than this are one level, metres: far below what is written, far above what arithmetic adds. */
const SAME_LEVEL_M = 1e-6;

/** Whether the rule is about a level: about every one, or about that one. */
function saysAnythingAt(element: DesignElement, downM: number, request: CriterionRequest): boolean {
  if (isForEveryLevel(request)) return true;
  const asked = designLevelAsked(element, request);
  return asked !== undefined && Math.abs(asked - downM) <= SAME_LEVEL_M;
}

interface ReferenceLine {
  readonly origin: NorthEastDown;
  readonly axes: DesignAxes;
  /** depth of the origin where it is a point of the as-built axis */
  readonly fromDepthM: number | undefined;
  /** true where the line itself is made from the as-built axis */
  readonly isOwn: boolean;
}

function referenceLine(axis: JudgedAxis, request: CriterionRequest): ReferenceLine | NotMeasured {
  const { element, path } = axis;
  const bearingDeg = request.numbers["along_bearing_deg"];
  const axes = designAxes(element, bearingDeg === undefined ? undefined : radiansFromDegrees(bearingDeg));
  const from = wordOf(planPosition, request, "from");
  if (from === "design") return { origin: element.head, axes, fromDepthM: undefined, isOwn: false };
  const range = readRange(axis);
  const origin = interpolatePath(path, range.fromM).position;
  if (from === "as-built-top") return { origin, axes, fromDepthM: range.fromM, isOwn: false };
  if (isPartlyRead(axis)) return { reason: "criteria.own-line-not-read" };
  const direction = unit(subtract(interpolatePath(path, range.toM).position, origin));
  return { origin, axes: squareTo(axes, direction), fromDepthM: range.fromM, isOwn: true };
}

/** The same axes about another direction: along stays in its vertical plane as far as it can. */
function squareTo(axes: DesignAxes, direction: NorthEastDown): DesignAxes {
  const along = unit(cross(axes.across, direction));
  return { direction, along, across: cross(direction, along) };
}

function heldAgainst(
  axis: JudgedAxis,
  request: CriterionRequest,
  line: ReferenceLine,
  depthM: number,
  partial: boolean,
): { readonly candidates: Measured[] } | NotMeasured {
  const { position } = interpolatePath(axis.path, depthM);
  const allowance = allowanceAt(axis.element, position.down, request);
  if ("reason" in allowance) return allowance;
  const offset = offsetFromLine(line.origin, line.axes, position);
  const where = { atDownM: position.down, atDepthM: depthM, partial };
  const form = {
    fromDepthM: line.fromDepthM,
    atDepthM: depthM,
    axes: line.axes,
    alongM: offset.along,
    acrossM: offset.across,
  };
  const candidates: Measured[] = [];
  if (allowance.radialM !== undefined)
    candidates.push({
      value: offset.offset,
      limit: allowance.radialM,
      ...where,
      ...(line.isOwn ? {} : { form: { ...form, component: "both", limitM: allowance.radialM } }),
    });
  for (const [component, value, limit] of [
    ["along", offset.along, allowance.alongM],
    ["across", offset.across, allowance.acrossM],
  ] as const) {
    const foundOn = { code: component === "along" ? "criteria.on-along" : "criteria.on-across", values: {} };
    if (limit !== undefined)
      candidates.push({
        value: Math.abs(value),
        limit,
        ...where,
        foundOn,
        ...(line.isOwn ? {} : { form: { ...form, component, limitM: limit } }),
      });
  }
  return { candidates };
}
