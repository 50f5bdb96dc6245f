import { describe, expect, test } from "vitest";
import { ned } from "../geometry/vector.ts";
import type { ClosureModel } from "../readings/survey-run.ts";
import { ContractError } from "../result.ts";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import type { ChainRows } from "./heading-chain.ts";
import { closeHeadings, type KnownHeading } from "./heading-closure.ts";

/** Rows of a plumb hole: there the change of heading is the turn shown. Times in minutes, turns in degrees. */
const rowsOf = (timesMin: readonly number[], turnsDeg: readonly number[]): ChainRows => ({
  timeS: Float64Array.from(timesMin, (t) => 60 * t),
  turnRad: Float64Array.from(turnsDeg, (turn) => turn * DEG),
  depthM: Float64Array.from(timesMin, (_, i) => i),
  tiltX: new Float64Array(timesMin.length),
  tiltY: new Float64Array(timesMin.length),
  ladder: timesMin.map((_, i) => i),
});
const known = (row: number, headingDeg: number, uncertaintyDeg = 0.1): KnownHeading => ({
  row,
  headingRad: headingDeg * DEG,
  standardUncertaintyRad: uncertaintyDeg * DEG,
});
const still = { ownRateRadPerS: 0, earthRate: ned(0, 0, 0) };
const degrees = (values: Float64Array) => [...values].map((value) => Math.round((value / DEG) * 1e9) / 1e9);

const times = [0, 10, 20, 30, 40];

describe("[C4] closing the headings", () => {
  test("linear in time: a drift of 0.1 degrees a minute is found and taken out everywhere", () => {
    const turns = [0, 90, 45, 20, 30];
    const rows = rowsOf(
      times,
      turns.map((turn, i) => turn + 0.1 * times[i]!),
    );
    const closed = closeHeadings(rows, still, [known(0, 100), known(4, 130)], "linear-time");
    expect(closed.misclosureRad / DEG).toBeCloseTo(4, 12);
    expect(degrees(closed.headingRad)).toEqual([100, 190, 145, 120, 130]);
    expect(degrees(closed.driftRad)).toEqual([0, 1, 2, 3, 4]);
    expect(closed).toMatchObject({ model: "linear-time", modelChanged: undefined });
  });

  test("linear in turn: a gyro that shows 1 % too much", () => {
    const turns = [0, 100, 300, 200, 500];
    const rows = rowsOf(
      times,
      turns.map((turn) => 1.01 * turn),
    );
    const closed = closeHeadings(rows, still, [known(0, 0), known(4, 500 - 360)], "linear-turn");
    expect(closed.misclosureRad / DEG).toBeCloseTo(5, 12);
    expect(degrees(closed.headingRad)).toEqual(turns);
  });

  test("least squares over ties: drift and scale at once", () => {
    const long = [0, 10, 20, 30, 40, 50];
    const turns = [0, 360, 720, 100, -300, 0];
    const shown = turns.map((turn, i) => (turn + 0.02 * long[i]!) / (1 - 0.002));
    const rows = rowsOf(long, shown);
    const ties = [0, 1, 2, 4, 5].map((row) => known(row, 10 + turns[row]!));
    const closed = closeHeadings(rows, still, ties, "least-squares");
    expect(closed.model).toBe("least-squares");
    expect(closed.headingRad[3]! / DEG).toBeCloseTo(110, 9);
    expect(closed.driftRad[2]! / DEG).toBeCloseTo(0.4 + 0.002 * (shown[2]! - shown[0]!), 9);
  });

  test("least squares shares out what ties find wrong with each other, the first one included", () => {
    const rows = rowsOf([0, 10, 20], [0, 0, 0]);
    const closed = closeHeadings(rows, still, [known(0, 0), known(1, 0.3), known(2, 0)], "least-squares");
    // best straight line through 0, -0.3, 0 is -0.1 everywhere
    expect(degrees(closed.headingRad).map((value) => Math.round(value * 1e6) / 1e6)).toEqual([0.1, 0.1, 0.1]);
  });

  test("left open: the misclosure is told and nothing is shared out", () => {
    const closed = closeHeadings(rowsOf(times, [0, 1, 2, 3, 4]), still, [known(0, 0), known(4, 0)], "none");
    expect(closed.misclosureRad / DEG).toBeCloseTo(4, 12);
    expect(degrees(closed.headingRad)).toEqual([0, 1, 2, 3, 4]);
    expect(degrees(closed.driftRad)).toEqual([0, 0, 0, 0, 0]);
  });

  test("one known heading closes nothing: there is no misclosure, not one of 0", () => {
    const closed = closeHeadings(rowsOf(times, [0, 1, 2, 3, 4]), still, [known(4, 50)], "linear-time");
    expect(closed.misclosureRad).toBeNaN();
    expect(closed).toMatchObject({ model: "none", modelChanged: undefined });
    expect(degrees(closed.headingRad)).toEqual([46, 47, 48, 49, 50]);
  });

  test.each([
    [359, 3, -4],
    [1, 357, 4],
    [0, 180, 180],
    [720, 0, 0],
  ])(
    "the misclosure goes to the nearest turn: carried %f, known %f, off by %f",
    (carried, reference, off) => {
      const closed = closeHeadings(
        rowsOf([0, 10], [0, carried]),
        still,
        [known(0, 0), known(1, reference)],
        "linear-time",
      );
      expect(closed.misclosureRad / DEG).toBeCloseTo(off, 9);
      expect(Math.cos(closed.headingRad[1]! - reference * DEG)).toBeCloseTo(1, 12);
    },
  );

  test("a drift is found in a leaning hole as well, where it changes the directions", () => {
    const lean = Math.sin(5 * DEG);
    const turned = [0, 60, 200, 310, 90].map((turn) => turn * DEG);
    const rows: ChainRows = {
      ...rowsOf(
        times,
        turned.map((turn, i) => turn / DEG + 0.1 * times[i]!),
      ),
      tiltX: Float64Array.from(turned, (turn) => lean * Math.cos(turn)),
      tiltY: Float64Array.from(turned, (turn) => -lean * Math.sin(turn)),
    };
    const closed = closeHeadings(rows, still, [known(0, 0), known(4, 90)], "linear-time");
    // the hole leans due north all the way
    for (let i = 0; i < times.length; i++) {
      expect(closed.north[i]).toBeCloseTo(lean, 10);
      expect(closed.east[i]).toBeCloseTo(0, 10);
    }
  });

  const turnless = [0, 30, -20, 10, 5];
  const turning = [0, 100, 200, 300, 400];
  test.each([
    ["linear-turn", turnless, times, 2, "linear-time", "turn-too-small"],
    ["linear-turn", turning, times, 2, "linear-turn", undefined],
    ["linear-turn", turning, [0, 0, 0, 0, 0], 2, "linear-turn", undefined],
    ["linear-turn", turnless, [0, 0, 0, 0, 0], 2, "none", "no-time-between"],
    ["linear-time", turning, [0, 0, 0, 0, 0], 2, "none", "no-time-between"],
    ["least-squares", turning, [0, 0, 0, 0, 0], 3, "none", "no-time-between"],
    ["least-squares", turning, times, 2, "linear-time", "too-few-headings"],
    ["least-squares", turning, times, 3, "least-squares", undefined],
    ["none", turning, times, 3, "none", undefined],
    ["least-squares", turning, times, 1, "none", undefined],
  ] as const)(
    "asked for %s with turns %j at %j and %i headings: %s, %s",
    (asked, turns, at, count, used, why) => {
      const rows = [0, 2, 4].filter((_, i) => count === 3 || (count === 2 ? i !== 1 : i === 0));
      const closed = closeHeadings(
        rowsOf(at, turns),
        still,
        rows.map((row) => known(row, turns[row]!)),
        asked satisfies ClosureModel,
      );
      expect(closed).toMatchObject({ model: used, modelChanged: why });
      expect([...closed.headingRad].every(Number.isFinite)).toBe(true);
    },
  );

  test("no heading known at all is the caller's mistake", () => {
    expect(() => closeHeadings(rowsOf(times, turning), still, [], "linear-time")).toThrow(ContractError);
  });
});
