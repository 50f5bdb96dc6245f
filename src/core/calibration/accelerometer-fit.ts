import { solveLeastSquares } from "../num/least-squares.ts";
import { matrixFromRows } from "../num/matrix.ts";
import type { AccelerometerCalibration } from "./calibration.ts";

/** What turns three shown accelerations into true ones: 3 zeros, 3 scales, 6 cross terms. */
export interface AccelerometerFit {
  /** rows: shown x, shown y, shown z, 1; columns: true x, y, z. Shape: 4 x 3, row by row */
  readonly matrix: Float64Array;
  /** standard deviation of one reading from what the fit leaves, in the unit of the positions */
  readonly residualDeviation: number;
  readonly degreesOfFreedom: number;
}

/** Rule B2; fewer leave nothing to judge the fit by. */
const LEAST_POSITIONS = 6;

/**
 * Fits the 12 numbers of an accelerometer triad from six or more known positions.
 *
 * @returns undefined if the positions do not determine the 12 numbers (fewer than six, or all in one plane).
 *
 * Frame: probe. Source: rule B2; true = [x y z 1] P by least squares, docs/sources.md [E7].
 * Checked against: test/published/accelerometer-six-position.
 */
export function fitAccelerometer(
  positions: AccelerometerCalibration["positions"],
): AccelerometerFit | undefined {
  const count = positions.length;
  if (count < LEAST_POSITIONS) return undefined;
  // Noise lets readings span all directions even where the positions do not, so the positions themselves are asked too.
  const ideal = matrixFromRows(positions.map(({ expected }) => [...expected, 1]));
  if (solveLeastSquares(ideal, new Float64Array(count)) === undefined) return undefined;
  const design = matrixFromRows(positions.map(({ shown }) => [...shown, 1]));
  const matrix = new Float64Array(12);
  let squares = 0;
  for (const axis of [0, 1, 2] as const) {
    const truth = Float64Array.from(positions, ({ expected }) => expected[axis]);
    const solution = solveLeastSquares(design, truth);
    if (solution === undefined) return undefined;
    for (let row = 0; row < 4; row++) matrix[row * 3 + axis] = solution.parameters[row]!;
    squares += solution.weightedSumOfSquares;
  }
  const degreesOfFreedom = 3 * count - 12;
  return { matrix, residualDeviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/** True accelerations from shown ones. Frame: probe. Source: rule B2. */
export function correctAccelerations(
  fit: AccelerometerFit,
  x: number,
  y: number,
  z: number,
): readonly [number, number, number] {
  const { matrix } = fit;
  const axis = (column: 0 | 1 | 2): number =>
    matrix[column]! * x + matrix[3 + column]! * y + matrix[6 + column]! * z + matrix[9 + column]!;
  return [axis(0), axis(1), axis(2)];
}
