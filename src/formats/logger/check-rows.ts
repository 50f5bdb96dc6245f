import { usualInterval } from "#core";
import type { Finder } from "../finding/finder.ts";
import type { Role } from "./roles.ts";
import type { ReadRow } from "./row-reader.ts";

/** A row in the program's axes and signs. */
export interface TurnedRow extends Omit<ReadRow, "numbers"> {
  readonly numbers: Partial<Record<Role, number>>;
}

/** A step over so many usual ones is a gap. */
const GAP = 1.75;

/** A turn that begins anew at a full turn is carried on; the first such step is told. */
export function carryTurnOn(rows: readonly TurnedRow[], found: Finder): void {
  const turns = rows.map(({ numbers }) => numbers.turn ?? Number.NaN);
  if (!turns.every((turn) => !(turn < 0 || turn > 360)) && !turns.every((turn) => !(Math.abs(turn) > 180)))
    return;
  let [previous, carried, steps] = [Number.NaN, 0, 0];
  let first: number | undefined;
  for (const [index, turn] of turns.entries()) {
    if (Number.isNaN(turn)) continue;
    if (Math.abs(turn - previous) > 180) {
      carried += turn > previous ? -360 : 360;
      steps += 1;
      first ??= rows[index]!.line;
    }
    previous = turn;
    rows[index]!.numbers.turn = turn + carried;
  }
  if (first !== undefined)
    found.note("logger.turn-carried-on", { line: first }, { found: steps, expected: 360 });
}

/**
 * Flags depths that stand again, turn back, or leave a long step; each leg and face by itself.
 *
 * @param field heading of the depths in the file, for the findings.
 */
export function flagDepths(rows: readonly TurnedRow[], field: string, found: Finder): void {
  const deep = rows.filter(({ numbers }) => !Number.isNaN(numbers.depth ?? Number.NaN));
  const usual = usualStep(deep.map(({ numbers }) => numbers.depth!));
  let way = 0;
  for (const [i, row] of deep.slice(1).entries()) {
    const before = deep[i]!;
    const step = row.numbers.depth! - before.numbers.depth!;
    if (row.leg !== before.leg || row.face !== before.face) way = 0;
    else {
      flagStep(row, before, step, way, usual, (code, values) =>
        found.warning(code, { line: row.line, field }, values),
      );
      if (step !== 0) way = Math.sign(step);
    }
  }
}

type Tell = (
  code: "logger.depth-repeated" | "logger.depth-turns" | "logger.gap",
  values: Readonly<Record<string, string | number>>,
) => void;

function flagStep(
  row: TurnedRow,
  before: TurnedRow,
  step: number,
  way: number,
  usual: number,
  tell: Tell,
): void {
  const shown = { found: `${rounded(row.numbers.depth!)} m`, other: before.line };
  if (step === 0) {
    row.flags.push("depth-repeated");
    tell("logger.depth-repeated", { ...shown, expected: "another depth" });
  }
  if (way !== 0 && step !== 0 && Math.sign(step) !== way) {
    row.flags.push("depth-turns");
    tell("logger.depth-turns", { ...shown, expected: "a depth that goes on" });
  }
  if (usual > 0 && Math.abs(step) > GAP * usual) {
    row.flags.push("gap");
    tell("logger.gap", { found: `${rounded(Math.abs(step))} m`, expected: `${rounded(usual)} m` });
  }
}

/** Of the depths that occur, whatever the order in which they were read. */
const usualStep = (depths: readonly number[]): number =>
  usualInterval(Float64Array.from(new Set(depths)).sort());

const rounded = (metres: number): number => Math.round(metres * 1000) / 1000;
