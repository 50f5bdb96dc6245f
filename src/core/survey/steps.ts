/**
 * The steps of the computation, in order, with their revisions.
 *
 * A revision is raised whenever the same input could give another number, so that a stored result says by which
 * state of the formula it was made.
 */
export const stepRevisions = {
  depth: 1,
  accelerometer: 1,
  "tilt-zero": 1,
  north: 1,
  "gyro-zero": 1,
  "gyro-scale": 1,
  heading: 1,
  "heading-closure": 1,
  "two-face": 1,
  "combine-passes": 1,
  path: 1,
} as const;

export type StepName = keyof typeof stepRevisions;
