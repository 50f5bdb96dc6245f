import type { Leg } from "../readings/survey-run.ts";

/** One series of stations in one direction on one face: rows of the run, sorted by depth. */
export interface Pass {
  readonly direction: "down" | "up";
  /** 1 or 2; 0 = the file does not say */
  readonly face: number;
  readonly rows: readonly number[];
}

/** How the rows of a run serve: where headings are known, and which stations belong together. */
export interface RunLayout {
  readonly openingRow: number;
  readonly closingRow: number;
  readonly tieRows: readonly number[];
  readonly passes: readonly Pass[];
}

const isStation = (leg: Leg): boolean => leg === "" || leg === "down" || leg === "up";

/**
 * Sorts the rows of a run into passes.
 *
 * Rows that name no leg belong to the way down as far as the deepest of their face, to the way up after it.
 * Without legs open and close, the first and the last row are where the references hold.
 *
 * @param depthM corrected depths; rows with a NaN depth belong to no pass.
 *
 * Frame: none. Source: job folder contract, docs/formats/job-folder.md.
 */
export function layOutRun(leg: readonly Leg[], face: Uint8Array, depthM: Float64Array): RunLayout {
  const count = leg.length;
  const open = leg.lastIndexOf("open");
  const close = leg.indexOf("close");
  const deepest = deepestByFace(leg, face, depthM);
  const groups = new Map<string, { direction: "down" | "up"; face: number; rows: number[] }>();
  for (let i = 0; i < count; i++) {
    const own = leg[i]!;
    if (!isStation(own) || Number.isNaN(depthM[i]!)) continue;
    const direction = own === "up" || (own === "" && i > deepest.get(face[i]!)!) ? "up" : "down";
    const key = `${direction} ${face[i]}`;
    const group = groups.get(key) ?? { direction, face: face[i]!, rows: [] };
    groups.set(key, group);
    group.rows.push(i);
  }
  for (const group of groups.values()) group.rows.sort((a, b) => depthM[a]! - depthM[b]! || a - b);
  return {
    openingRow: Math.max(open, 0),
    closingRow: close >= 0 ? close : count - 1,
    tieRows: leg.flatMap((own, i) => (own === "tie" ? [i] : [])),
    passes: [...groups.values()],
  };
}

function deepestByFace(leg: readonly Leg[], face: Uint8Array, depthM: Float64Array): Map<number, number> {
  const deepest = new Map<number, number>();
  for (let i = 0; i < leg.length; i++) {
    if (!isStation(leg[i]!) || Number.isNaN(depthM[i]!)) continue;
    const best = deepest.get(face[i]!);
    if (best === undefined || depthM[i]! > depthM[best]!) deepest.set(face[i]!, i);
  }
  return deepest;
}
