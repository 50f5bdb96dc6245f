import { appliesTo } from "../criteria/applies-to.ts";
import type { JudgedAxis, NotMeasured } from "../criteria/criterion.ts";
import { judge } from "../criteria/judge.ts";
import { leanOfChord, worstSegment } from "../criteria/lean.ts";
import { readRange } from "../criteria/read-range.ts";
import { designDirection } from "../elements/design-axis.ts";
import { dot, subtract } from "../geometry/vector.ts";
import { positionAt } from "../path/interpolate-path.ts";
import type { Issue, Severity } from "../result.ts";
import { degreesFromRadians } from "../units/quantity.ts";
import { axisOfElement, type ElementWork, type Find } from "./axis-of-element.ts";
import { axisRows } from "./element-axis.ts";
import { ElementUncertainty } from "./element-uncertainty.ts";
import type { ElementResult, VerticalityResult } from "./results.ts";
import type { TrialOptions } from "./trials.ts";

/**
 * From the runs of an element to its as-built axis, its uncertainty and its verdicts.
 *
 * @param trials how many trials of the budget, where some are wanted or needed.
 *
 * Frame: site NED. Source: rules D5, E1 to E5, F1 to F4.
 * Checked against: the rigid-body simulator (test/jobs).
 */
export function reduceElement(work: ElementWork, trials: TrialOptions): ElementResult {
  const { element } = work;
  const findings: Issue[] = [];
  const find = (severity: Severity, code: string, values: Issue["values"]): void => {
    const { file, line } = element.place;
    findings.push({ code, severity, place: { file, line }, values: { element: element.id, ...values } });
  };
  const found = axisOfElement(work, find);
  const axis = found?.axis;
  // without the uncertainty of its runs nothing is said of the element's: 0 would be a claim
  const known = found?.shares.every(({ worked }) => worked.uncertainty !== undefined) ?? false;
  const uncertainty = found !== undefined && known ? new ElementUncertainty(work, found, trials) : undefined;
  if (axis !== undefined) findOppositeLean(axis, find);
  const because = notJudgedBecause(work, axis);
  const requests = work.criteria.filter((request) => appliesTo(request, element));
  const rows = axis === undefined ? [] : axisRows(axis.path, element);
  return {
    elementId: element.id,
    runIds: work.runs.map(({ run }) => run.id),
    path: axis?.path,
    axis: rows,
    gaps: axis?.gaps ?? [],
    verticality: axis === undefined ? undefined : verticalityOf(axis),
    verdicts: requests.map((request) =>
      judge(
        because ?? axis!,
        request,
        work.decision,
        because === undefined ? uncertainty?.ofValue(request) : undefined,
      ),
    ),
    uncertainty: uncertainty?.result(rows),
    findings,
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
  const design = designDirection(element);
  const chord = subtract(positionAt(path, path.count - 1), positionAt(path, 0));
  const lateral = Math.hypot(chord.north, chord.east);
  const towards = chord.north * design.north + chord.east * design.east;
  if (!(towards < 0 && dot(chord, design) > 0)) return;
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
