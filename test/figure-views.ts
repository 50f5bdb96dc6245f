import type { AxisRow, DesignElement } from "#core";
import type { ElementView } from "#figures";

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

export const viewOf = (changes: Partial<ElementView> = {}): ElementView => ({
  element: plumbPile,
  kindName: "bored pile",
  jobName: "Example job",
  alongBearingRad: 0,
  axis: bentAxis,
  gaps: [],
  allowances: [],
  verdicts: [],
  outline: false,
  language: "en",
  ...changes,
});
