import type { AxesView } from "../desk.ts";
import type { JobNow } from "../jobs/worked-job.ts";

/** As-built axes of all elements that are worked out, in arrays that cross to the screen without being copied. */
export function axesView(revision: number, { read, results }: JobNow): AxesView | undefined {
  const elements = read.job?.elements;
  const first = elements?.[0];
  if (elements === undefined || first === undefined) return undefined;
  const axes = elements.map(({ id }) => results.get(id)?.result.axis ?? []);
  const start = new Int32Array(elements.length + 1);
  for (const [i, axis] of axes.entries()) start[i + 1] = start[i]! + axis.length;
  const count = start[elements.length]!;
  const [eastM, northM, levelM] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  // single precision holds millimetres near the origin, not from the origin of a grid
  const origin = { eastM: first.head.east, northM: first.head.north };
  for (const [k, row] of axes.flat().entries()) {
    eastM[k] = row.eastM - origin.eastM;
    northM[k] = row.northM - origin.northM;
    levelM[k] = -row.downM;
  }
  return { revision, ids: elements.map(({ id }) => id), start, origin, eastM, northM, levelM };
}
