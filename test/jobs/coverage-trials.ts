import {
  coverageCircle,
  type DeclaredError,
  depthAtDown,
  errorEllipse,
  type HolePath,
  interpolatePath,
  ned,
  offsetCovariance,
  propagateRun,
  reduceRun,
  type SourceId,
  type SurveyRun,
  sourceKinds,
  sourceValueToSi,
  type UncertainAxis,
} from "#core";
import { createRandom, type PassSpec, type ProbeErrors, type RunSpec, simulateRun } from "#simulator";
import { contextOf, siteDeg, stationsTo } from "./truth-trials.ts";

/** Standard values of the errors of a scenario, in the units of the budget. Everything that is not named is 0. */
type Standards = Partial<Record<SourceId, number>>;

export interface CoverageScenario {
  readonly name: string;
  readonly spec: Omit<RunSpec, "id" | "elementId" | "instrumentId" | "head" | "site">;
  readonly standards: Standards;
}

const grid = (standardUncertaintyDeg: number) => ({
  headingDeg: 25,
  north: "grid" as const,
  standardUncertaintyDeg,
});
const raked = (rakeDeg: number) =>
  ({ shape: "arc", rakeDeg, bearingDeg: 60, bendDegPerM: 0.03, towardsDeg: 70 }) as const;
const gyro = { measures: "tilt-turn", opening: grid(0.7), closing: grid(0.7) } as const;
const usual: Standards = {
  "tilt-noise": 0.02,
  "tilt-zero-x": 0.03,
  "tilt-zero-y": 0.03,
  "tilt-scale": 0.002,
  "gyro-noise": 0.3,
  "gyro-bias": 6,
  "gyro-scale": 0.0005,
  "depth-scale": 0.001,
  "opening-heading": 0.7,
  "closing-heading": 0.7,
};
const faces: readonly PassSpec[] = [
  { leg: "down", face: 1 },
  { leg: "down", face: 2 },
];
const keyed: Standards = {
  "tilt-noise": 0.02,
  "tilt-zero-x": 0.03,
  "tilt-zero-y": 0.03,
  "groove-bearing": 0.5,
  "tilt-scale": 0.002,
};

/** Twelve kinds of survey whose stated uncertainty is held against the truth. */
export const coverageScenarios: readonly CoverageScenario[] = [
  { name: "plumb", spec: { ...gyro, hole: raked(0), stationsM: stationsTo(25, 1) }, standards: usual },
  { name: "raked", spec: { ...gyro, hole: raked(12), stationsM: stationsTo(25, 1) }, standards: usual },
  {
    name: "two faces",
    spec: { ...gyro, hole: raked(4), stationsM: stationsTo(20, 1), passes: faces },
    standards: usual,
  },
  {
    name: "one face",
    spec: { ...gyro, hole: raked(4), stationsM: stationsTo(20, 1) },
    standards: { ...usual, "tilt-zero-x": 0.1, "tilt-zero-y": 0.1 },
  },
  {
    name: "closed",
    spec: { ...gyro, hole: raked(8), stationsM: stationsTo(30, 1) },
    standards: { ...usual, "gyro-noise": 1 },
  },
  {
    name: "open",
    spec: { measures: "tilt-turn", opening: grid(0.7), hole: raked(8), stationsM: stationsTo(30, 1) },
    standards: { ...usual, "gyro-bias": 2, "gyro-noise": 0.8 },
  },
  {
    name: "keyed",
    spec: {
      measures: "keyed-tilt",
      grooveBearingDeg: 40,
      hole: raked(5),
      stationsM: stationsTo(25, 1),
      passes: faces,
    },
    standards: keyed,
  },
  { name: "long", spec: { ...gyro, hole: raked(3), stationsM: stationsTo(70, 2) }, standards: usual },
  { name: "short", spec: { ...gyro, hole: raked(6), stationsM: stationsTo(6, 0.5) }, standards: usual },
  {
    name: "coarse stations",
    spec: {
      ...gyro,
      hole: {
        shape: "waves",
        rakeDeg: 3,
        bearingDeg: 60,
        waves: [
          { amplitudeDeg: 1.2, wavelengthM: 34, phaseDeg: 30, towardsDeg: 20 },
          { amplitudeDeg: 0.8, wavelengthM: 51, phaseDeg: 200, towardsDeg: 110 },
        ],
      },
      stationsM: stationsTo(40, 5),
    },
    standards: usual,
  },
  {
    name: "noisy",
    spec: { ...gyro, hole: raked(6), stationsM: stationsTo(25, 1) },
    standards: { ...usual, "tilt-noise": 0.2, "gyro-noise": 1 },
  },
  {
    name: "quiet",
    spec: { ...gyro, hole: raked(6), stationsM: stationsTo(25, 1) },
    standards: {
      "tilt-noise": 0.002,
      "tilt-zero-x": 0.004,
      "tilt-zero-y": 0.004,
      "gyro-noise": 0.02,
      "gyro-bias": 0.5,
      "opening-heading": 0.7,
      "closing-heading": 0.7,
    },
  },
];

/** The errors that one run really has, by chance from the standard values. */
function probeErrors(standards: Standards, seed: number): Partial<ProbeErrors> {
  const random = createRandom(`coverage errors ${seed}`);
  const by = (id: SourceId) => (standards[id] ?? 0) * random.normal();
  return {
    tiltNoiseDeg: standards["tilt-noise"] ?? 0,
    tiltZeroXDeg: by("tilt-zero-x"),
    tiltZeroYDeg: by("tilt-zero-y"),
    ...(() => {
      const scale = by("tilt-scale");
      return { tiltScaleX: scale, tiltScaleY: scale };
    })(),
    gyroWalkDegPerRootH: standards["gyro-noise"] ?? 0,
    gyroBiasDegPerH: by("gyro-bias"),
    gyroScale: by("gyro-scale"),
    depthScale: by("depth-scale"),
    grooveBearingErrorDeg: by("groove-bearing"),
  };
}

/** Every source at the value of the scenario, all others at 0: the program is told exactly what the probe has. */
export function declaredErrors(standards: Standards): readonly DeclaredError[] {
  return sourceKinds
    .filter(({ id }) => id !== "unread-stretch")
    .map(({ id }) => ({
      source: id,
      value: sourceValueToSi(id, standards[id] ?? 0),
      distribution: undefined,
    }));
}

export interface CoverageOutcome {
  /** squared length of the error at the toe in units of its ellipse: below 5.991 in 95 of 100 */
  readonly toe: number;
  /** error of the point of worst offset over the stated radius u95: below 1 in 95 of 100 */
  readonly worst: number;
}

/** One simulated run: what was stated against what was true, both at equal level. */
export function coverageTrial(scenario: CoverageScenario, seed: number): CoverageOutcome {
  const spec: RunSpec = {
    ...scenario.spec,
    id: "run",
    elementId: "hole",
    instrumentId: "probe",
    head: ned(0, 0, 0),
    site: siteDeg,
    errors: probeErrors(scenario.standards, seed),
  };
  const simulated = simulateRun(spec, `coverage ${scenario.name} ${seed}`);
  const run: SurveyRun = { ...simulated.run, declaredErrors: declaredErrors(scenario.standards) };
  const context = contextOf(spec);
  const reduced = reduceRun(run, context);
  const uncertainty = propagateRun(run, context, reduced);
  if (uncertainty === undefined) throw new Error(`${scenario.name} ${seed}: no path`);
  const { path } = uncertainty;
  const axis = { path, parts: [{ uncertainty, share: 1 }], tubes: [] };
  const truth = simulated.truth.path;
  const offsets = Array.from({ length: path.count }, (_, i) => Math.hypot(path.northM[i]!, path.eastM[i]!));
  const worst = offsets.indexOf(Math.max(...offsets));
  return {
    toe: againstTruth(axis, truth, path.count - 1).squared,
    worst: againstTruth(axis, truth, worst).overU95,
  };
}

const plumb = { direction: ned(0, 0, 1), along: ned(1, 0, 0), across: ned(0, 1, 0) };

/** Error of a station at equal level, in units of its ellipse and of its u95. */
function againstTruth(
  axis: UncertainAxis,
  truth: HolePath,
  station: number,
): { squared: number; overU95: number } {
  const { path } = axis;
  const { position } = interpolatePath(truth, depthAtDown(truth, levelInside(truth, path.downM[station]!)));
  const north = path.northM[station]! - position.north;
  const east = path.eastM[station]! - position.east;
  const form = { fromDepthM: undefined, atDepthM: path.depthM[station]!, axes: plumb };
  const { alongAlong: nn, alongAcross: ne, acrossAcross: ee } = offsetCovariance(axis, form);
  const determinant = nn * ee - ne * ne;
  const { semiMajor, semiMinor } = errorEllipse({ nn, ne, ee });
  return {
    squared: (ee * north * north - 2 * ne * north * east + nn * east * east) / determinant,
    overU95: Math.hypot(north, east) / coverageCircle(semiMajor, semiMinor, 0.95),
  };
}

/** The truth ends at the nominal toe; a found toe a few millimetres below it is compared there. */
const levelInside = (truth: HolePath, downM: number): number =>
  Math.min(downM, truth.downM[truth.count - 1]!);

/** Square of the semi-axis of the ellipse that holds 95 % of a bivariate normal: -2 ln 0.05. */
export const ELLIPSE_95 = -2 * Math.log(0.05);

/** Shares of runs whose truth was where it was said to be, for seeds from 1 on. */
export function coverageOf(scenario: CoverageScenario, runs: number): { toe: number; worst: number } {
  let toe = 0;
  let worst = 0;
  for (let seed = 1; seed <= runs; seed++) {
    const outcome = coverageTrial(scenario, seed);
    if (outcome.toe <= ELLIPSE_95) toe += 1;
    if (outcome.worst <= 1) worst += 1;
  }
  return { toe: toe / runs, worst: worst / runs };
}
