import type { Leg } from "../readings/survey-run.ts";

/** One series of stations in one direction on one face: rows of the run, sorted by depth. */
export interface Pass {
  readonly direction: "down" | "up";
  /** 1 or 2; 0 = the file does not say */
  readonly face: number;
  /** 1 for the first pass of its direction and face, 2 for its repeat, and so on */
  readonly repeat: number;
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
 * Rows that name no leg belong to the way down as far as the deepest of their face, to the way up after it; a face
 * that begins at its deepest row was read on the way up. A pass ends where its face turns the other way, so that a way
 * down read twice is two passes.
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
  const passes: { direction: "down" | "up"; face: number; repeat: number; rows: number[] }[] = [];
  const latest = new Map<number, (typeof passes)[number]>();
  for (let i = 0; i < count; i++) {
    const own = leg[i]!;
    if (!isStation(own) || Number.isNaN(depthM[i]!)) continue;
    const direction = own === "" ? directionOf(i, deepest.get(face[i]!)!) : own === "up" ? "up" : "down";
    const before = latest.get(face[i]!);
    if (before?.direction === direction) {
      before.rows.push(i);
      continue;
    }
    const same = passes.filter((pass) => pass.direction === direction && pass.face === face[i]);
    const pass: (typeof passes)[number] = { direction, face: face[i]!, repeat: same.length + 1, rows: [i] };
    passes.push(pass);
    latest.set(face[i]!, pass);
  }
  for (const pass of passes) pass.rows.sort((a, b) => depthM[a]! - depthM[b]! || a - b);
  return {
    openingRow: Math.max(open, 0),
    closingRow: close >= 0 ? close : count - 1,
    tieRows: leg.flatMap((own, i) => (own === "tie" ? [i] : [])),
    passes,
  };
}

/** Rows of one face, in the order of the file: the first, the deepest and the last. */
interface Turning {
  readonly first: number;
  readonly deepest: number;
  readonly last: number;
}

function directionOf(row: number, { first, deepest, last }: Turning): "down" | "up" {
  const startsAtToe = first === deepest && last > first;
  return row > deepest || startsAtToe ? "up" : "down";
}

function deepestByFace(leg: readonly Leg[], face: Uint8Array, depthM: Float64Array): Map<number, Turning> {
  const turnings = new Map<number, Turning>();
  for (let i = 0; i < leg.length; i++) {
    if (!isStation(leg[i]!) || Number.isNaN(depthM[i]!)) continue;
    const known = turnings.get(face[i]!);
    if (known === undefined) turnings.set(face[i]!, { first: i, deepest: i, last: i });
    else {
      const deepest = depthM[i]! > depthM[known.deepest]! ? i : known.deepest;
      turnings.set(face[i]!, { first: known.first, deepest, last: i });
    }
  }
  return turnings;
}
