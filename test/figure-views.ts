import type { AllanRecord, AxisRow, DesignElement, GyroZeroCalibration, OffsetEllipse } from "#core";
import { allanCurve } from "#core";
import type { BudgetView, ElementView } from "#figures";

/** An invented bored pile, plumb, head at +4.500 m, toe at -20.000 m. */
export const plumbPile: DesignElement = {
  id: "P12",
  kind: "bored-pile",
  section: { shape: "round", diameterM: 0.9 },
  head: { north: 200, east: 100, down: -4.5 },
  cutoffDownM: -1.2,
  toeDownM: 20,
  rakeRad: 0,
  rakeBearingRad: undefined,
  group: undefined,
  sequence: undefined,
  role: undefined,
  loadKn: undefined,
  place: { file: "elements.csv", line: 2 },
};

/** A row of the axis of a plumb element; offsets in metres. */
export function axisRow(
  downM: number,
  offsetEastM: number,
  offsetNorthM: number,
  interpolated = false,
): AxisRow {
  return {
    depthM: downM + 4.5,
    northM: 200 + offsetNorthM,
    eastM: 100 + offsetEastM,
    downM,
    offsetNorthM,
    offsetEastM,
    offsetM: Math.hypot(offsetEastM, offsetNorthM),
    alongM: offsetNorthM,
    acrossM: offsetEastM,
    interpolated,
  };
}

/** A hole that bends gently away from plumb, a station a metre. */
export const bentAxis: readonly AxisRow[] = Array.from({ length: 25 }, (_, i) => {
  const depth = i * 1.02;
  return axisRow(depth - 4.5, 0.004 + 0.00016 * depth ** 2, 0.01 * Math.sin(depth / 5) + 0.002 * depth);
});

/** The same uncertainty at every row, metres; the larger half axis from along towards across, radians. */
export const ellipsesOf = (
  rows: readonly AxisRow[],
  semiMajor95M: number,
  semiMinor95M: number,
  majorFromAlongRad = 0,
): readonly OffsetEllipse[] =>
  rows.map(() => ({ u95M: semiMajor95M, semiMajor95M, semiMinor95M, majorFromAlongRad }));

/** A budget in which one source holds 84 % at the toe, and three share the worst level. */
export const unevenBudget: BudgetView = {
  places: [
    {
      place: "toe",
      atDownM: 19.98,
      shares: [
        { source: "opening-heading", standardM: 0.0084 ** 0.5 / 10, share: 0.84 },
        { source: "seating", standardM: 0.0016 ** 0.5 / 10, share: 0.16 },
      ],
    },
    {
      place: "worst",
      atDownM: 12,
      shares: [
        { source: "opening-heading", standardM: 0.004, share: 0.5 },
        { source: "seating", standardM: 0.003, share: 0.28125 },
        { source: "tube-position", standardM: 0.007 ** 0.5 / 31.622776601683793, share: 0.21875 },
      ],
    },
  ],
  sources: [
    {
      source: "opening-heading",
      value: 0.3 * (Math.PI / 180),
      distribution: "normal",
      from: "reference of the run",
      degreesOfFreedom: Number.POSITIVE_INFINITY,
    },
    {
      source: "seating",
      value: 0.02 * (Math.PI / 180),
      distribution: "rectangular",
      from: "usual site work",
      degreesOfFreedom: Number.POSITIVE_INFINITY,
    },
  ],
  u95M: [0.025, 0.014],
};

/** An invented log: noise that is the same for every machine, 1 s apart. */
function inventedRates(count: number): Float64Array {
  let state = 12345;
  return Float64Array.from({ length: count }, () => {
    state = (16807 * state) % 2147483647;
    return 1e-5 * (state / 2147483647 - 0.5);
  });
}

const curve = allanCurve(inventedRates(1200), 1, { confidence: 0.95 });
export const allanRecord: AllanRecord = {
  curve,
  confidence: 0.95,
  seconds: 1200,
  walk: { value: 2.9e-6, lower: 2.6e-6, upper: 3.2e-6 },
  instability: { value: 3e-7, lower: 2e-7, upper: 5e-7, isReached: true, atS: 300 },
  rateWalk: { value: 4e-9, lower: 2e-9, upper: 9e-9 },
};

export const gyroZero: GyroZeroCalibration = {
  id: "zero-1",
  instrumentId: "probe-1",
  madeAt: "2026-01-01T00:00:00Z",
  validity: { until: undefined, maxRuns: undefined, endedBy: [] },
  field: "calibrations[0]",
  kind: "gyro-zero",
  rateRadPerS: 1e-5,
  standardUncertaintyRadPerS: undefined,
  axisTrueNed: [0, 0, 1],
  latitudeRad: 0.9,
  allan: allanRecord,
};

export const viewOf = (changes: Partial<ElementView> = {}): ElementView => ({
  element: plumbPile,
  kindName: "bored pile",
  jobName: "Example job",
  alongBearingRad: 0,
  axis: bentAxis,
  gaps: [],
  ellipses: [],
  budget: undefined,
  allowances: [],
  verdicts: [],
  outline: false,
  language: "en",
  ...changes,
});
