import type { GyroZeroCalibration } from "../calibration/calibration.ts";
import type { SourceId } from "../uncertainty/error-source.ts";
import { type Evidence, LEAST_DEGREES_OF_FREEDOM } from "../uncertainty/type-a/evidence.ts";
import { fromAllanCurve } from "../uncertainty/type-a/from-allan-curve.ts";
import { type Closure, fromClosures } from "../uncertainty/type-a/from-closures.ts";
import { fromDoubleRuns } from "../uncertainty/type-a/from-double-runs.ts";
import { fromFaceSums } from "../uncertainty/type-a/from-face-sums.ts";
import type { TypeAValue } from "../uncertainty/type-a/type-a-value.ts";
import type { WorkedRun } from "./axis-of-element.ts";
import { passDifferences, type ReadPass } from "./pass-differences.ts";
import { budgetOfRun } from "./propagate-run.ts";
import type { RunEvidence } from "./reduce-run.ts";
import { calibrationOf } from "./run-context.ts";

/** A run that was worked out and agrees with its references: what evidence may rest on. */
type SoundRun = Pick<WorkedRun, "run" | "context"> & { readonly shown: RunEvidence };

/** A value found, before it is set beside the declared one. */
interface Found {
  readonly sources: readonly SourceId[];
  readonly value: TypeAValue | undefined;
  readonly count: number;
}

/**
 * Standard values that a job's own runs and calibrations show, instrument by instrument.
 *
 * Every reading speaks once: passes of one hole are taken in pairs that share none, faces of a keyed probe by their sums. Runs over
 * their misclosure limit are left out, which makes closures look a little better where the limit is close.
 *
 * @param worked runs of the job, worked out. @param replaces whether well-founded values are to take the place of declared ones;
 *   of several for one source, the first in the order double runs, face sums, closures, log at rest.
 * @returns in the order of the instruments' first runs.
 *
 * Frame: none. Source: rule E1; JCGM 100:2008, 4.2.
 * Checked against: simulated runs with known errors (test/jobs/evidence.test.ts).
 */
export function gatherEvidence(
  worked: readonly Pick<WorkedRun, "run" | "context" | "reduced">[],
  replaces: boolean,
): readonly Evidence[] {
  const byInstrument = new Map<string, SoundRun[]>();
  for (const { run, context, reduced } of worked) {
    if (!reduced.result.judgeable || reduced.evidence === undefined) continue;
    const runs = byInstrument.get(run.instrumentId);
    const sound = { run, context, shown: reduced.evidence };
    if (runs === undefined) byInstrument.set(run.instrumentId, [sound]);
    else runs.push(sound);
  }
  return [...byInstrument].flatMap(([instrumentId, runs]) => evidenceOf(instrumentId, runs, replaces));
}

function evidenceOf(instrumentId: string, runs: readonly SoundRun[], replaces: boolean): readonly Evidence[] {
  // what a run says for itself alone is not said of the instrument
  const budgets = [...new Map(runs.toReversed().map((each) => [each.run.measures, each])).values()].map(
    ({ run, context }) => budgetOfRun({ ...run, declaredErrors: [] }, context),
  );
  const declaredOf = (source: SourceId) =>
    budgets.find((budget) => budget.has(source))?.get(source)?.value ?? 0;
  const taken = new Set<SourceId>();
  return [
    ofDoubleRuns(runs),
    ofFaceSums(runs),
    ...ofFaceZeros(runs),
    ...ofClosures(runs),
    ...ofRestLogs(runs),
  ].flatMap(({ sources, value: found, count }) => {
    if (found === undefined) return [];
    const { value, degreesOfFreedom, from: origin } = found;
    const used =
      replaces && degreesOfFreedom >= LEAST_DEGREES_OF_FREEDOM && !sources.some((each) => taken.has(each));
    if (used) for (const source of sources) taken.add(source);
    const declared = Math.hypot(...sources.map(declaredOf));
    return [{ instrumentId, sources, value, degreesOfFreedom, origin, count, declared, used }];
  });
}

const READING: readonly SourceId[] = ["tilt-noise", "seating"];

function ofDoubleRuns(runs: readonly SoundRun[]): Found {
  const residuals: number[] = [];
  let fitted = 0;
  const speaking = new Set<SoundRun>();
  for (const passes of passesByHole(runs).values())
    for (let i = 0; i + 1 < passes.length; i += 2) {
      const [first, second] = [passes[i]!, passes[i + 1]!];
      const differences = passDifferences(first, second);
      if (differences.residuals.length <= differences.fitted) continue;
      for (const residual of differences.residuals) residuals.push(residual);
      fitted += differences.fitted;
      speaking.add(first.of).add(second.of);
    }
  return { sources: READING, value: fromDoubleRuns(residuals, fitted), count: speaking.size };
}

type HolePass = ReadPass & { readonly of: SoundRun };

/** Passes of tilts, hole by hole, in the order in which they were read; those of a keyed probe only where no face faces them. */
function passesByHole(runs: readonly SoundRun[]): ReadonlyMap<string, readonly HolePass[]> {
  const holes = new Map<string, HolePass[]>();
  for (const each of runs) {
    const { run, shown } = each;
    if (shown.headingRad === undefined) continue;
    const keyed = run.measures === "keyed-tilt";
    if (keyed && facePairs(shown).length > 0) continue;
    const key = `${run.measures} ${run.elementId} ${run.tubeId ?? ""}`;
    const passes = holes.get(key) ?? [];
    for (const pass of shown.passes)
      passes.push({ pass, headingRad: shown.headingRad, carried: !keyed, of: each });
    holes.set(key, passes);
  }
  return holes;
}

/** A keyed probe stands exactly opposite on its other face, so its sums are twice the zero and nothing else. */
function ofFaceSums(runs: readonly SoundRun[]): Found {
  let squares = 0;
  let degreesOfFreedom = 0;
  let count = 0;
  for (const { run, shown } of runs) {
    if (run.measures !== "keyed-tilt" || shown.tilts === undefined) continue;
    const pairs = facePairs(shown);
    for (const sines of [shown.tilts.x, shown.tilts.y]) {
      const found = fromFaceSums(pairs.map(([first, second]) => sines[first]! + sines[second]!));
      if (found === undefined) continue;
      squares += found.degreesOfFreedom * found.value ** 2;
      degreesOfFreedom += found.degreesOfFreedom;
    }
    if (pairs.length > 1) count += 1;
  }
  const value: TypeAValue | undefined =
    degreesOfFreedom === 0
      ? undefined
      : { value: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom, from: "face-sums" };
  return { sources: READING, value, count };
}

/** Rows of face 1 and face 2 at the same depth, from the first pass of each. */
function facePairs({ passes }: RunEvidence): readonly (readonly [number, number])[] {
  const first = passes.find(({ face }) => face === 1);
  const second = passes.find(({ face }) => face === 2);
  if (first === undefined || second === undefined) return [];
  const rowAt = new Map(second.rows.map((rows, i) => [Math.round(second.depthM[i]! * 100), rows[0]!]));
  return first.rows.flatMap((rows, i) => {
    const other = rowAt.get(Math.round(first.depthM[i]! * 100));
    return other === undefined ? [] : [[rows[0]!, other] as const];
  });
}

/** What turning the probe finds of a zero, calibration by calibration: a calibration has one error for all its runs. */
function ofFaceZeros(runs: readonly SoundRun[]): readonly Found[] {
  const zeros = new Map<string, { x: number; y: number; n: number }>();
  let count = 0;
  for (const { run, context, shown } of runs) {
    if (shown.faceZero === undefined) continue;
    const key = calibrationOf(context, "tilt-zero")?.id ?? `run ${run.id}`;
    const sum = zeros.get(key) ?? { x: 0, y: 0, n: 0 };
    zeros.set(key, { x: sum.x + shown.faceZero.xRad, y: sum.y + shown.faceZero.yRad, n: sum.n + 1 });
    count += 1;
  }
  const rms = (of: "x" | "y"): TypeAValue | undefined =>
    zeros.size === 0
      ? undefined
      : {
          value: Math.sqrt([...zeros.values()].reduce((sum, z) => sum + (z[of] / z.n) ** 2, 0) / zeros.size),
          degreesOfFreedom: zeros.size,
          from: "face-sums",
        };
  return [
    { sources: ["tilt-zero-x"], value: rms("x"), count },
    { sources: ["tilt-zero-y"], value: rms("y"), count },
  ];
}

/** The rate that the closures of each calibration have in common, and what they scatter beside it. */
function ofClosures(runs: readonly SoundRun[]): readonly Found[] {
  const byZero = new Map<string, (Closure & { readonly referenceRad: number })[]>();
  for (const { run, context, shown } of runs) {
    if (shown.closure === undefined) continue;
    const key = calibrationOf(context, "gyro-zero")?.id ?? `run ${run.id}`;
    const closures = byZero.get(key);
    if (closures === undefined) byZero.set(key, [shown.closure]);
    else closures.push(shown.closure);
  }
  const groups = [...byZero.values()];
  const all = groups.flat();
  if (all.length === 0) return [];
  const referenceRad = Math.sqrt(
    all.reduce((sum, closure) => sum + closure.referenceRad ** 2, 0) / all.length,
  );
  let squares = 0;
  const left = groups.flatMap((closures) => {
    const seconds = closures.reduce((sum, closure) => sum + closure.seconds, 0);
    const rate = closures.reduce((sum, closure) => sum + closure.misclosureRad, 0) / seconds;
    squares += rate * rate - (2 * closures.length * referenceRad ** 2) / seconds ** 2;
    return closures.map((closure) => ({
      misclosureRad: closure.misclosureRad - rate * closure.seconds,
      seconds: closure.seconds,
    }));
  });
  const bias: TypeAValue = {
    value: Math.sqrt(Math.max(0, squares) / groups.length),
    degreesOfFreedom: groups.length,
    from: "closures",
  };
  return [
    { sources: ["gyro-bias"], value: bias, count: all.length },
    { sources: ["gyro-noise"], value: fromClosures(left, referenceRad, groups.length), count: all.length },
  ];
}

/** The log at rest whose Allan curve is known best. */
function ofRestLogs(runs: readonly SoundRun[]): readonly Found[] {
  const logs = new Map<string, GyroZeroCalibration>();
  for (const { context } of runs) {
    const calibration = calibrationOf(context, "gyro-zero");
    if (calibration?.allan !== undefined) logs.set(calibration.id, calibration);
  }
  const values = [...logs.values()].map(({ allan }) => fromAllanCurve(allan!.curve));
  const best = values.toSorted((a, b) => b.degreesOfFreedom - a.degreesOfFreedom)[0];
  return best === undefined ? [] : [{ sources: ["gyro-noise"], value: best, count: logs.size }];
}
