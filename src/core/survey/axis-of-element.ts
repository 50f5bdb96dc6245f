import type { Instrument } from "../calibration/calibration.ts";
import { combinePasses, leadingPass, usualInterval } from "../correction/combine-passes.ts";
import type { CriterionRequest, JudgedAxis } from "../criteria/criterion.ts";
import type { Decision } from "../criteria/decision.ts";
import type { AccessTube, DesignElement } from "../elements/element.ts";
import type { HolePath } from "../path/hole-path.ts";
import { depthAtDown, interpolatePath } from "../path/interpolate-path.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import type { Issue, Severity } from "../result.ts";
import { buildPath } from "./build-path.ts";
import { elementPath, type SurveyedHole } from "./element-axis.ts";
import { endAllowanceM } from "./end-allowance.ts";
import type { RunUncertainty } from "./propagate-run.ts";
import type { ReducedRun } from "./reduce-run.ts";
import { reportAgreement } from "./report-agreement.ts";
import type { RunResult } from "./results.ts";
import type { RunContext } from "./run-context.ts";

/** A run of an element, as given and worked out. */
export interface WorkedRun {
  readonly run: SurveyRun;
  readonly context: RunContext;
  readonly reduced: ReducedRun;
  /** first-order uncertainty; undefined where the run has no path, and in trials */
  readonly uncertainty: RunUncertainty | undefined;
}

/** What belongs to one element: its design, its tubes, its runs worked out, and the rules. */
export interface ElementWork {
  readonly element: DesignElement;
  readonly tubes: readonly AccessTube[];
  readonly runs: readonly WorkedRun[];
  readonly criteria: readonly CriterionRequest[];
  readonly decision: Decision;
  readonly method: PathMethodId;
}

/** One hole of the element: all its runs combined. */
interface CombinedHole extends SurveyedHole {
  readonly gaps: RunResult["gaps"];
  readonly intervalM: number;
  /** runs that the hole rests on, with their shares in it */
  readonly shares: readonly RunShare[];
}

export interface RunShare {
  readonly worked: WorkedRun;
  readonly share: number;
}

/** The as-built axis of an element with the runs that it rests on. */
export interface ElementAxis {
  readonly axis: JudgedAxis;
  /** shares over all holes; they add up to 1 */
  readonly shares: readonly RunShare[];
  readonly instrument: Instrument | undefined;
}

/**
 * From the runs of an element to its as-built axis: runs on one tube combined stop by stop, tubes together at equal level.
 *
 * @returns undefined where no run has a path.
 *
 * Frame: site NED. Source: rules D5, F1.
 * Checked against: the rigid-body simulator (test/jobs).
 */
export function axisOfElement(work: ElementWork, find: Find): ElementAxis | undefined {
  const holes = combineHoles(work, find);
  const path = holes.length === 0 ? undefined : elementPath(holes, work.tubes);
  if (path === undefined || path.count < 2) return undefined;
  const shares = holes.flatMap((hole) =>
    hole.shares.map(({ worked, share }) => ({ worked, share: share / holes.length })),
  );
  const instrument = shares[0]?.worked.context.instrument;
  return { axis: judgedAxis(work, holes, path, instrument), shares, instrument };
}

export type Find = (severity: Severity, code: string, values: Issue["values"]) => void;

function combineHoles(work: ElementWork, find: Find): readonly CombinedHole[] {
  const byTube = new Map<string, ElementWork["runs"][number][]>();
  // in the order of their ids, so that the order in which runs are listed changes nothing
  for (const run of work.runs.toSorted((a, b) => (a.run.id < b.run.id ? -1 : 1))) {
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
  const intervalM = usualInterval(leadingPass(tangents).depthM);
  const { path, gaps } = first.reduced.result;
  if (tangents.length === 1)
    return path === undefined ? undefined : { path, gaps, intervalM, shares: [{ worked: first, share: 1 }] };
  const { profile, agreement, contributions } = combinePasses(tangents);
  reportAgreement(agreement, "survey.runs-disagree", { find });
  // Findings about single runs stand with the runs; here only the path is wanted.
  const silent = { find: () => undefined, step: () => undefined };
  const target = { top: first.context.top, method: work.method };
  const built = buildPath(profile, target, silent, first.run.stationLimitM ?? 2 * intervalM);
  if (built === undefined) return undefined;
  const shares = used.map((worked, pass) => ({
    worked,
    share:
      contributions.reduce((sum, each) => (each.pass === pass ? sum + each.share : sum), 0) /
      profile.depthM.length,
  }));
  return { ...built, intervalM, shares };
}

function judgedAxis(
  { element }: ElementWork,
  holes: readonly CombinedHole[],
  path: HolePath,
  instrument: Instrument | undefined,
): JudgedAxis {
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
    gaps: holes.flatMap((hole) => gapsOnAxis(hole, path)),
    tubes: holes.flatMap((hole) => (hole.tube === undefined ? [] : [{ tube: hole.tube, path: hole.path }])),
    instrument,
  };
}

/** Gaps of one hole by the depths of the element's axis, which may start at another level than the hole. */
function gapsOnAxis({ path, gaps }: CombinedHole, axis: HolePath): RunResult["gaps"] {
  const depthOnAxis = (depthM: number): number => {
    const { down } = interpolatePath(path, depthM).position;
    if (down <= axis.downM[0]!) return axis.depthM[0]!;
    const onAxis = depthAtDown(axis, down);
    return Number.isNaN(onAxis) ? axis.depthM[axis.count - 1]! : onAxis;
  };
  return gaps
    .map((gap) => ({ fromM: depthOnAxis(gap.fromM), toM: depthOnAxis(gap.toM) }))
    .filter((gap) => gap.toM > gap.fromM);
}
