import { describe, expect, test } from "vitest";
import { fillNormals } from "../num/random-stream.ts";
import { ContractError } from "../result.ts";
import { assessRestLog, type RestLog } from "./rest-log.ts";

const NONE = new Float64Array(0);

function normals(seed: number, stream: number, count: number): Float64Array {
  const values = new Float64Array(count);
  fillNormals({ seed, stream }, 0, values);
  return values;
}

const timesOf = (count: number, spacingS: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => i * spacingS);

/** A log of rates: white noise of walk N, a random walk K of the rate, a constant. */
function restLog(
  seed: number,
  { seconds = 1200, spacingS = 0.1, walk = 1, rateWalk = 0, rate = 0 }: Partial<Record<string, number>>,
): RestLog {
  const count = Math.round(seconds / spacingS) + 1;
  const white = normals(seed, 0, count);
  const steps = normals(seed, 1, count);
  let wander = 0;
  const rates = white.map((value, i) => {
    wander += rateWalk * Math.sqrt(spacingS) * steps[i]!;
    return rate + wander + (walk / Math.sqrt(spacingS)) * value;
  });
  return { count, timeS: timesOf(count, spacingS), rateRadPerS: rates, turnRad: NONE };
}

/** The same as the angle that the gyro adds up. */
function asTurns(log: RestLog): RestLog {
  let turn = 0;
  const turnRad = log.rateRadPerS.map((rate, i) => {
    if (i > 0) turn += rate * (log.timeS[i]! - log.timeS[i - 1]!);
    return turn;
  });
  return { ...log, rateRadPerS: NONE, turnRad };
}

const kinds = (log: RestLog): readonly string[] => assessRestLog(log)!.disturbances.map(({ kind }) => kind);

describe("assessRestLog", () => {
  test.each([
    ["rates", (log: RestLog) => log],
    ["turns", asTurns],
  ])(
    "[B3] white noise as %s: the mean scatters as its uncertainty says, N is what went in (seeds 0 to 199)",
    (_, form) => {
      let squares = 0;
      let trends = 0;
      for (let seed = 0; seed < 200; seed++) {
        const found = assessRestLog(form(restLog(seed, { seconds: 600, walk: 2, rate: 7 })))!;
        squares += ((found.rateRadPerS - 7) / (2 / Math.sqrt(600))) ** 2 / 200;
        expect(found.standardUncertaintyRadPerS / (2 / Math.sqrt(600)), `seed ${seed}`).toBeGreaterThan(0.8);
        expect(found.allan.walk.value, `seed ${seed}`).toBeGreaterThan(1.6);
        expect(found.allan.walk.value, `seed ${seed}`).toBeLessThan(2.4);
        trends += found.disturbances.length;
      }
      expect(Math.abs(squares - 1)).toBeLessThan(4 * Math.sqrt(2 / 200));
      expect(trends).toBeLessThanOrEqual(4); // two tests at 0.1 %
    },
  );

  test("[B3] the intervals of N and of the curve hold the truth about as often as they say (seeds 0 to 199)", () => {
    let inside = 0;
    for (let seed = 0; seed < 200; seed++) {
      const { walk, confidence } = assessRestLog(restLog(seed, { seconds: 400 }))!.allan;
      expect(confidence).toBe(0.95);
      if (walk.lower <= 1 && walk.upper >= 1) inside++;
    }
    expect(inside / 200).toBeGreaterThan(0.93);
  });

  test("[B3] with a random walk K of the rate: floor and K are read off, and limit the zero (seeds 0 to 4)", () => {
    for (let seed = 0; seed < 5; seed++) {
      const rateWalk = 0.02;
      const { allan, standardUncertaintyRadPerS } = assessRestLog(
        restLog(seed, { seconds: 20_000, spacingS: 1, rateWalk }),
      )!;
      // lowest point of N^2 / tau + K^2 tau / 3: at sqrt(3) N / K
      const floor = Math.sqrt((2 * rateWalk) / Math.sqrt(3));
      expect(allan.instability.isReached).toBe(true);
      expect(
        Math.abs((allan.instability.value * Math.sqrt((2 * Math.LN2) / Math.PI)) / floor - 1),
      ).toBeLessThan(0.25);
      expect(allan.instability.atS).toBeGreaterThan(20);
      expect(allan.instability.atS).toBeLessThan(400);
      expect(Math.abs(allan.rateWalk!.value / rateWalk - 1), `seed ${seed}`).toBeLessThan(0.35);
      expect(standardUncertaintyRadPerS).toBeGreaterThan(floor);
    }
  });

  test("[B3] a curve that still falls gives only a bound of the instability, and no K", () => {
    const { allan } = assessRestLog(restLog(1, { seconds: 120, spacingS: 1 }))!;
    expect(allan.instability.isReached).toBe(false);
    expect(allan.rateWalk).toBeUndefined();
    expect(allan.curve.averagingTimeS[0]).toBeCloseTo(1, 12);
  });

  test("a coarse readout of the turn does not pass for noise", () => {
    const log = asTurns(restLog(2, { seconds: 1200, spacingS: 0.01, walk: 1 }));
    const coarse = { ...log, turnRad: log.turnRad.map((turn) => Math.round(turn * 4) / 4) };
    expect(Math.abs(assessRestLog(coarse)!.allan.walk.value - 1)).toBeLessThan(0.15);
  });

  test("a knock, a warming gyro, a step of the rate and a gap in the record are told", () => {
    const knocked = restLog(3, {});
    knocked.rateRadPerS.fill(400, 5000, 5010);
    const [jump] = assessRestLog(knocked)!.disturbances;
    expect(jump).toMatchObject({ kind: "jump", row: 5000 });
    const warming = restLog(4, {});
    for (let i = 0; i < warming.count; i++) warming.rateRadPerS[i]! += Math.exp(-warming.timeS[i]! / 300);
    expect(kinds(warming)).toEqual(["trend"]);
    const stepped = restLog(5, {});
    for (let i = 6000; i < stepped.count; i++) stepped.rateRadPerS[i]! += 0.5;
    expect(kinds(stepped)).toEqual(["trend"]);
    const still = restLog(6, {});
    const broken = { ...still, timeS: still.timeS.map((time) => (time > 500 ? time + 90 : time)) };
    expect(assessRestLog(broken)!.disturbances).toEqual([
      { kind: "gap", row: 5001, seconds: expect.closeTo(90.1, 6), usualS: expect.closeTo(0.1075, 3) },
    ]);
    expect(kinds(still)).toEqual([]);
  });

  test("a log that is too short gives no zero", () => {
    expect(assessRestLog(restLog(1, { seconds: 50 }))).toBeUndefined();
    expect(assessRestLog(restLog(1, { seconds: 300, spacingS: 10 }))).toBeUndefined();
    expect(assessRestLog({ count: 0, timeS: NONE, rateRadPerS: NONE, turnRad: NONE })).toBeUndefined();
  });

  test("throws ContractError for values that are missing, times that fall, and both kinds at once", () => {
    const log = restLog(1, {});
    expect(() => assessRestLog({ ...log, rateRadPerS: log.rateRadPerS.with(3, Number.NaN) })).toThrow(
      ContractError,
    );
    expect(() => assessRestLog({ ...log, timeS: log.timeS.with(3, 0) })).toThrow(ContractError);
    expect(() => assessRestLog({ ...log, turnRad: log.rateRadPerS })).toThrow(ContractError);
  });
});
