import { sameStopM, usualInterval } from "../correction/combine-passes.ts";
import { solveLeastSquares } from "../num/least-squares.ts";
import { matrixFromRows } from "../num/matrix.ts";
import type { PassStations } from "./pass-stations.ts";

/** A pass with the headings of its rows. */
export interface ReadPass {
  readonly pass: PassStations;
  /** heading of probe +x by row, radians */
  readonly headingRad: Float64Array;
  /** whether a gyro carried the headings, so that a pass may be turned as a whole */
  readonly carried: boolean;
}

/** What two passes of one hole differ by, freed of what a zero and a turned heading explain. */
export interface PassDifferences {
  /** second less first, north and east of every stop that both read once. Dimensionless */
  readonly residuals: readonly number[];
  /** parameters that were taken off */
  readonly fitted: number;
}

/**
 * Differences of two passes of one hole, stop by stop, without what has its own place in the budget.
 *
 * A zero left in the tilts shows as far as the probe stood turned differently, and a heading that is off turns all directions of a
 * pass alike; both are fitted to the differences and taken off. What is left is how the probe reads and sits.
 *
 * Frame: site NED. Source: rule D5; difference of two directions to first order.
 * Checked against: simulated passes with known noise (test/jobs/evidence.test.ts).
 */
export function passDifferences(first: ReadPass, second: ReadPass): PassDifferences {
  const differences: number[] = [];
  const ofZero: number[][] = [];
  const ofHeading: number[][] = [];
  for (const [i, k] of sharedStops(first.pass, second.pass)) {
    const before = first.headingRad[first.pass.rows[i]![0]!]!;
    const after = second.headingRad[second.pass.rows[k]![0]!]!;
    const cosine = Math.cos(after) - Math.cos(before);
    const sine = Math.sin(after) - Math.sin(before);
    const north = (first.pass.north[i]! + second.pass.north[k]!) / 2;
    const east = (first.pass.east[i]! + second.pass.east[k]!) / 2;
    differences.push(
      second.pass.north[k]! - first.pass.north[i]!,
      second.pass.east[k]! - first.pass.east[i]!,
    );
    ofZero.push([cosine, -sine], [sine, cosine]);
    ofHeading.push([-east], [north]);
  }
  const carried = first.carried || second.carried;
  const columns = ofZero.map((zero, i) => ({
    all: [...zero, ...ofHeading[i]!],
    zero,
    heading: ofHeading[i]!,
  }));
  const tries = carried ? (["all", "zero", "heading"] as const) : (["zero"] as const);
  for (const which of tries) {
    const rows = columns.map((row) => row[which]);
    const fitted = rows[0]?.length ?? 0;
    if (rows.length <= fitted || !isShown(rows)) continue;
    const solution = solveLeastSquares(matrixFromRows(rows), Float64Array.from(differences));
    if (solution !== undefined) return { residuals: Array.from(solution.residuals), fitted };
  }
  return { residuals: differences, fitted: 0 };
}

/** Below this a parameter is drowned by the rounding of the readings. */
const LEAST_COLUMN = 1e-6;

const isShown = (rows: readonly (readonly number[])[]): boolean =>
  (rows[0] ?? []).every(
    (_, column) => rows.reduce((sum, row) => sum + Math.abs(row[column]!), 0) > LEAST_COLUMN * rows.length,
  );

/** Stops that both passes read, once each. */
function sharedStops(first: PassStations, second: PassStations): readonly (readonly [number, number])[] {
  const tolerance = sameStopM(usualInterval(first.depthM));
  const pairs: (readonly [number, number])[] = [];
  let k = 0;
  for (let i = 0; i < first.depthM.length; i++) {
    const depthM = first.depthM[i]!;
    while (k < second.depthM.length && second.depthM[k]! < depthM - tolerance) k++;
    if (!(second.depthM[k]! <= depthM + tolerance)) continue;
    if (first.rows[i]!.length === 1 && second.rows[k]!.length === 1) pairs.push([i, k]);
  }
  return pairs;
}
