import type { Instrument } from "../calibration/calibration.ts";
import { combinePasses, type PassTangents, usualInterval } from "../correction/combine-passes.ts";
import { appliesTo } from "../criteria/applies-to.ts";
import type { CriterionRequest, JudgedAxis, NotMeasured } from "../criteria/criterion.ts";
import type { Decision } from "../criteria/decision.ts";
import { judge } from "../criteria/judge.ts";
import { leanOfChord, worstSegment } from "../criteria/lean.ts";
import { readRange } from "../criteria/read-range.ts";
import { designAxes, designDirection } from "../elements/design-axis.ts";
import type { AccessTube, DesignElement } from "../elements/element.ts";
import { dot, type NorthEastDown, subtract } from "../geometry/vector.ts";
import type { HolePath } from "../path/hole-path.ts";
import { positionAt } from "../path/interpolate-path.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { Issue, Severity } from "../result.ts";
import { degreesFromRadians } from "../units/quantity.ts";
import { buildPath } from "./build-path.ts";
import { axisRows, elementPath, type SurveyedHole } from "./element-axis.ts";
import type { ReducedRun } from "./reduce-run.ts";
import { reportAgreement } from "./report-agreement.ts";
import type { ElementResult, RunResult, VerticalityResult } from "./results.ts";

/** What belongs to one element: its design, its tubes, its runs worked out, and the rules. */
export interface ElementWork {
  readonly element: DesignElement;
  readonly tubes: readonly AccessTube[];
  readonly runs: readonly {
    readonly reduced: ReducedRun;
    readonly top: NorthEastDown;
    readonly stationLimitM: number | undefined;
    readonly instrument: Instrument | undefined;
  }[];
  readonly criteria: readonly CriterionRequest[];
  readonly decision: Decision;
  readonly method: PathMethodId;
}

/** One hole of the element: all its runs combined. */
interface CombinedHole extends SurveyedHole {
  readonly gaps: RunResult["gaps"];
  readonly intervalM: number;
}

/**
 * From the runs of an element to its as-built axis and its verdicts.
 *
 * Runs on one tube are combined stop by stop; tubes give the axis together.
 *
 * Frame: site NED. Source: rules D5, F1 to F3.
 * Checked against: the rigid-body simulator (test/jobs).
 */
export function reduceElement(work: ElementWork): ElementResult {
  const { element } = work;
  const findings: Issue[] = [];
  const find = (severity: Severity, code: string, values: Issue["values"]): void => {
    const { file, line } = element.place;
    findings.push({ code, severity, place: { file, line }, values: { element: element.id, ...values } });
  };
  const holes = combineHoles(work, find);
  const path = holes.length === 0 ? undefined : elementPath(holes, work.tubes);
  const axis = path === undefined || path.count < 2 ? undefined : judgedAxis(work, holes, path);
  if (axis !== undefined) findOppositeLean(axis, find);
  const because = notJudgedBecause(work, axis);
  return {
    elementId: element.id,
    runIds: work.runs.map(({ reduced }) => reduced.result.runId),
    path: axis?.path,
    axis: axis === undefined ? [] : axisRows(axis.path, element),
    gaps: axis?.gaps ?? [],
    verticality: axis === undefined ? undefined : verticalityOf(axis),
    verdicts: work.criteria
      .filter((request) => appliesTo(request, element))
      .map((request) => judge(because ?? axis!, request, work.decision)),
    findings,
  };
}

type Find = (severity: Severity, code: string, values: Issue["values"]) => void;

function combineHoles(work: ElementWork, find: Find): readonly CombinedHole[] {
  const byTube = new Map<string, ElementWork["runs"][number][]>();
  for (const run of work.runs) {
    if (run.reduced.result.path === undefined) continue;
    const key = run.reduced.result.tubeId ?? "";
    byTube.set(key, [...(byTube.get(key) ?? []), run]);
  }
  return [...byTube].flatMap(([key, runs]) => {
    const tube = work.tubes.find((each) => each.id === key);
    const hole = combineHole(work, runs, find);
    return hole === undefined ? [] : [{ ...hole, tube }];
  });
}

/** Runs over their misclosure limit do not pull on the others: they count only where there is nothing better. */
function combineHole(
  work: ElementWork,
  runs: ElementWork["runs"],
  find: Find,
): Omit<CombinedHole, "tube"> | undefined {
  const sound = runs.filter(({ reduced }) => reduced.result.judgeable);
  const used = sound.length > 0 ? sound : runs;
  const first = used[0]!;
  const tangents = used.flatMap(({ reduced }) => reduced.tangents ?? []);
  const intervalM = usualInterval(longest(tangents).depthM);
  const { path, gaps } = first.reduced.result;
  if (tangents.length === 1) return path === undefined ? undefined : { path, gaps, intervalM };
  const { profile, agreement } = combinePasses(tangents);
  reportAgreement(agreement, "survey.runs-disagree", { find });
  // Findings about single runs stand with the runs; here only the path is wanted.
  const silent = { find: () => undefined, step: () => undefined };
  const built = buildPath(profile, { top: first.top, method: work.method }, silent, first.stationLimitM);
  return built === undefined ? undefined : { ...built, intervalM };
}

const longest = (passes: readonly PassTangents[]): PassTangents =>
  passes.reduce((best, pass) => (pass.depthM.length > best.depthM.length ? pass : best));

/** Readings that stop this far above the toe, or start this far below the head, still speak for the whole length. */
const endAllowanceM = (intervalM: number): number =>
  Math.max(LEAST_END_ALLOWANCE_M, 2 * (Number.isNaN(intervalM) ? 0 : intervalM));
/** Length of probe and debris at the toe: common practice, no source. */
const LEAST_END_ALLOWANCE_M = 1;

function judgedAxis(work: ElementWork, holes: readonly CombinedHole[], path: HolePath): JudgedAxis {
  const { element } = work;
  const last = path.count - 1;
  const allowanceM = endAllowanceM(Math.max(...holes.map((hole) => hole.intervalM)));
  const shortOfToe = element.toeDownM === undefined ? 0 : element.toeDownM - path.downM[last]!;
  return {
    element,
    path,
    readFromM: path.depthM[0]!,
    readToM: path.depthM[last]!,
    reachesToe: shortOfToe <= allowanceM,
    reachesHead: path.downM[0]! - element.head.down <= allowanceM,
    gaps: holes.flatMap((hole) => hole.gaps),
    tubes: holes.flatMap((hole) => (hole.tube === undefined ? [] : [{ tube: hole.tube, path: hole.path }])),
    instrument: work.runs[0]?.instrument,
  };
}

/** Where nothing may be judged although rules apply. A run over its misclosure limit blocks the verdict (C4). */
function notJudgedBecause(work: ElementWork, axis: JudgedAxis | undefined): NotMeasured | undefined {
  if (work.runs.length === 0) return { reason: "survey.no-run" };
  if (axis === undefined) return { reason: "survey.no-usable-run" };
  const usable = work.runs.filter(({ reduced }) => reduced.result.path !== undefined);
  const tubes = new Set(usable.map(({ reduced }) => reduced.result.tubeId));
  for (const tube of tubes) {
    const ofTube = usable.filter(({ reduced }) => reduced.result.tubeId === tube);
    if (ofTube.some(({ reduced }) => reduced.result.judgeable)) continue;
    return { reason: "survey.run-blocked", values: { run: ofTube[0]!.reduced.result.runId } };
  }
  return undefined;
}

/** A raked hole that leans the other way was read with faces, axes or groove bearing mistaken, or is the wrong hole. */
function findOppositeLean(axis: JudgedAxis, find: Find): void {
  const { element, path } = axis;
  if (element.rakeRad < LEAST_RAKE_RAD) return;
  const { along } = designAxes(element);
  const chord = subtract(positionAt(path, path.count - 1), positionAt(path, 0));
  const lateral = Math.hypot(chord.north, chord.east);
  const towards = (chord.north * along.north + chord.east * along.east) / Math.hypot(along.north, along.east);
  if (!(towards < 0 && dot(chord, designDirection(element)) > 0)) return;
  find("error", "survey.leans-opposite", {
    lean_deg: degreesFromRadians(Math.atan2(lateral, chord.down)),
    bearing_deg: (degreesFromRadians(Math.atan2(chord.east, chord.north)) + 360) % 360,
    design_bearing_deg: degreesFromRadians(element.rakeBearingRad ?? Number.NaN),
  });
}
/** Rakes below this are close enough to plumb for a hole to lean either way, radians (1 in 50). */
const LEAST_RAKE_RAD = 0.02;

function verticalityOf(axis: JudgedAxis): VerticalityResult | undefined {
  const range = readRange(axis);
  if (!(range.fromM < range.toM)) return undefined;
  const direction = designDirection(axis.element);
  const worst = worstSegment(axis.path, direction, range);
  return {
    chordRatio: leanOfChord(axis.path, direction, range).ratio,
    worstSegmentRatio: worst?.ratio ?? Number.NaN,
    worstSegmentAtDownM: worst?.atDownM ?? Number.NaN,
  };
}
