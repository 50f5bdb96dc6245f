import type { ClosureModel } from "../readings/survey-run.ts";
import { contract } from "../result.ts";
import { wrapToPi } from "../units/quantity.ts";
import { fitGyroDrift } from "./gyro-drift.ts";
import { type ChainConstants, type ChainedHeadings, type ChainRows, chainHeadings } from "./heading-chain.ts";

/** A row at which the heading is known. */
export interface KnownHeading {
  readonly row: number;
  /** radians from grid north */
  readonly headingRad: number;
  readonly standardUncertaintyRad: number;
}

export interface ClosedHeadings extends ChainedHeadings {
  /** misclosure at the last known heading before anything was spread: measured less reference, (-pi, pi]; NaN with none */
  readonly misclosureRad: number;
  /** model that was used; "none" where there is nothing to close on */
  readonly model: ClosureModel;
  /** drift taken out at each row, radians */
  readonly driftRad: Float64Array;
  /** why another model than the one asked for was used */
  readonly modelChanged: "turn-too-small" | "too-few-headings" | "no-time-between" | undefined;
}

/** Below this net turn a scale error cannot be told from the noise of the references: common practice, no source. */
const LEAST_TURN_RAD = Math.PI / 2;
const ROUNDS = 4;
/** a change of the drift that moves no hole by a hundredth of a micrometre */
const SPREAD_RAD = 1e-10;

/**
 * Carries the headings through a run and spreads what the known headings find wrong.
 *
 * @param known the opening heading first, then ties and the closing heading in the order of the rows; at least one.
 * @param model linear in time, linear in accumulated turn, or both by least squares (needs ties); "none" leaves it open.
 * @throws ContractError if no heading is known.
 *
 * Frame: site NED. Source: rule C4; drift model, docs/sources.md [E6].
 * Checked against: the rigid-body simulator (test/jobs).
 */
export function closeHeadings(
  rows: ChainRows,
  constants: Pick<ChainConstants, "ownRateRadPerS" | "earthRate">,
  known: readonly KnownHeading[],
  model: ClosureModel,
): ClosedHeadings {
  const opening = known[0];
  contract(opening !== undefined, "closeHeadings: no heading is known");
  const all: ChainConstants = {
    ...constants,
    openingRow: opening.row,
    openingHeadingRad: opening.headingRad,
  };
  const choice = usableModel(rows, known, model);
  let driftRad = new Float64Array(rows.turnRad.length);
  let chained = chainHeadings(rows, all, driftRad);
  const misclosureRad = known.length > 1 ? errorAt(chained, known[known.length - 1]!) : Number.NaN;
  for (let round = 0; round < ROUNDS && choice.model !== "none"; round++) {
    // The drift changes the directions, they change holonomy and earth turn a little: spread the whole error again.
    const errors = known.map((reference) => errorAt(chained, reference) + driftRad[reference.row]!);
    const next = spread(rows, known, errors, choice.model);
    const change = next.reduce((largest, value, i) => Math.max(largest, Math.abs(value - driftRad[i]!)), 0);
    driftRad = next;
    chained = chainHeadings(rows, all, driftRad);
    if (!(change > SPREAD_RAD)) break;
  }
  return { ...chained, misclosureRad, driftRad, ...choice };
}

/** Heading carried to a row less the heading known there, to the nearest turn. */
const errorAt = (chained: ChainedHeadings, known: KnownHeading): number =>
  wrapToPi(chained.headingRad[known.row]! - known.headingRad);

function usableModel(
  rows: ChainRows,
  known: readonly KnownHeading[],
  model: ClosureModel,
): Pick<ClosedHeadings, "model" | "modelChanged"> {
  if (model === "none" || known.length < 2) return { model: "none", modelChanged: undefined };
  const first = known[0]!.row;
  const last = known[known.length - 1]!.row;
  const turn = Math.abs(rows.turnRad[last]! - rows.turnRad[first]!);
  if (model === "linear-turn" && turn >= LEAST_TURN_RAD) return { model, modelChanged: undefined };
  // Everything else shares the misclosure out by time.
  if (!(rows.timeS[last]! > rows.timeS[first]!)) return { model: "none", modelChanged: "no-time-between" };
  if (model === "linear-turn") return { model: "linear-time", modelChanged: "turn-too-small" };
  if (model === "least-squares" && known.length < 3)
    return { model: "linear-time", modelChanged: "too-few-headings" };
  return { model, modelChanged: undefined };
}

/** Drift at every row, from the errors at the known headings. */
function spread(
  rows: ChainRows,
  known: readonly KnownHeading[],
  errors: readonly number[],
  model: ClosureModel,
): Float64Array<ArrayBuffer> {
  const first = known[0]!.row;
  const last = known[known.length - 1]!.row;
  const sinceOpening = (values: Float64Array) => (row: number) => values[row]! - values[first]!;
  const time = sinceOpening(rows.timeS);
  const turn = sinceOpening(rows.turnRad);
  const count = rows.turnRad.length;
  if (model !== "least-squares") {
    const measure = model === "linear-turn" ? turn : time;
    const perUnit = errors[errors.length - 1]! / measure(last);
    return Float64Array.from({ length: count }, (_, row) => perUnit * measure(row));
  }
  const fit = fitGyroDrift(
    known.map((reference, i) => ({
      timeS: time(reference.row),
      turnRad: turn(reference.row),
      errorRad: errors[i]!,
      standardUncertaintyRad: reference.standardUncertaintyRad,
    })),
  );
  return Float64Array.from(
    { length: count },
    (_, row) => fit.startRad + fit.rateRadPerS * time(row) + fit.scale * turn(row),
  );
}
