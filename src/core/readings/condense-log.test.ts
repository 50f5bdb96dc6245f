import { describe, expect, test } from "vitest";
import { fillNormals } from "../num/random-stream.ts";
import { condenseLog } from "./condense-log.ts";
import { type CondenseOptions, type ContinuousLog, USUAL_STEADY } from "./continuous-log.ts";

const DEGREE = Math.PI / 180;
const NONE = new Float64Array(0);
const RATE_HZ = 50;

/** A piece of an invented log: at rest, or on the way to a depth. */
interface Piece {
  readonly seconds: number;
  /** metres, at the end of the piece */
  readonly toM: number;
  readonly tiltDeg?: number;
  readonly face?: number;
  /** turn about the axis in this piece, degrees */
  readonly turnDeg?: number;
  /** change of the tilt in this piece, degrees */
  readonly tiltChangeDeg?: number;
}

/** Noise of 0.05 degrees on every tilt; a gyro that shows 20 degrees an hour at rest. */
function logOf(pieces: readonly Piece[], seed = 1): ContinuousLog {
  const count = Math.round(RATE_HZ * pieces.reduce((sum, { seconds }) => sum + seconds, 0));
  const noise = new Float64Array(2 * count);
  fillNormals({ seed, stream: 0 }, 0, noise);
  const rows: { depth: number; tilt: number; turn: number; face: number; moves: boolean }[] = [];
  let depth = pieces[0]!.toM;
  let turn = 0;
  for (const { seconds, toM, tiltDeg = 0, face = 0, turnDeg = 0, tiltChangeDeg = 0 } of pieces) {
    const n = Math.round(seconds * RATE_HZ);
    for (let i = 0; i < n; i++) {
      const share = i / n;
      rows.push({
        depth: depth + share * (toM - depth),
        tilt: tiltDeg + share * tiltChangeDeg,
        turn: turn + share * turnDeg,
        face,
        moves: toM !== depth,
      });
    }
    depth = toM;
    turn += turnDeg;
  }
  const timeS = Float64Array.from(rows, (_, i) => i / RATE_HZ);
  const tilt = (offset: number) =>
    Float64Array.from(
      rows,
      (row, i) => (row.tilt + (row.moves ? 0.5 : 0.05) * noise[2 * i + offset]!) * DEGREE,
    );
  return {
    measures: "tilt-turn",
    count: rows.length,
    timeS,
    depthM: Float64Array.from(rows, (row) => row.depth),
    depthCounts: NONE,
    tiltXRad: tilt(0),
    tiltYRad: tilt(1),
    accX: NONE,
    accY: NONE,
    accZ: NONE,
    turnRad: Float64Array.from(rows, (row, i) => (row.turn + (20 / 3600) * timeS[i]!) * DEGREE),
    temperatureC: NONE,
    leg: new Uint8Array(0),
    face: Uint8Array.from(rows, (row) => row.face),
    line: Int32Array.from(rows, (_, i) => i + 2),
  };
}

const OPTIONS: CondenseOptions = { steady: USUAL_STEADY, metresPerCount: Number.NaN, closes: true, ties: 0 };
const rest = (toM: number, more: Partial<Piece> = {}): Piece => ({ seconds: 10, toM, ...more });
const go = (toM: number): Piece => ({ seconds: 5, toM });
const downAndUp = [rest(0), go(1), rest(1), go(2), rest(2), go(1), rest(1), go(0), rest(0)];

describe("condenseLog", () => {
  test("[C3] rows by leg: the top opens and closes the run, and is a station of each way", () => {
    const { readings, passedOver } = condenseLog(logOf(downAndUp), OPTIONS);
    const rows = readings.leg.map((leg, i) => `${leg} ${readings.depthM[i]!.toFixed(1)}`);
    expect(rows).toEqual(["open 0.0", "down 0.0", "down 1.0", "down 2.0", "up 1.0", "up 0.0", "close 0.0"]);
    expect(passedOver).toEqual([]);
  });

  test("an open run closes with nothing; a run that is hoisted without stops has no way up", () => {
    const open = condenseLog(logOf(downAndUp), { ...OPTIONS, closes: false }).readings;
    expect(open.leg).toEqual(["open", "down", "down", "down", "up", "up"]);
    const oneWay = logOf([rest(0), go(1), rest(1), go(2), rest(2), { seconds: 10, toM: 0 }, rest(0)]);
    expect(condenseLog(oneWay, OPTIONS).readings.leg).toEqual(["open", "down", "down", "down", "close"]);
  });

  test("[C3] each row: mean, samples, standard error of the mean, turn at the mean of the times, line of its first row", () => {
    const { readings, stretches } = condenseLog(logOf([rest(0), go(1), rest(1, { tiltDeg: 0.7 })]), OPTIONS);
    const row = readings.count - 1;
    const samples = readings.samples[row]!;
    expect(samples).toBeGreaterThan(8 * RATE_HZ);
    expect(Math.abs(readings.tiltXRad[row]! / DEGREE - 0.7)).toBeLessThan((4 * 0.05) / Math.sqrt(samples));
    expect(readings.seTiltXRad[row]! / DEGREE / (0.05 / Math.sqrt(samples))).toBeGreaterThan(0.7);
    expect(readings.seTiltXRad[row]! / DEGREE / (0.05 / Math.sqrt(samples))).toBeLessThan(1.5);
    expect(readings.turnRad[row]! / DEGREE).toBeCloseTo((20 / 3600) * readings.timeS[row]!, 10);
    expect(readings.line[row]).toBe(stretches[row]!.fromRow + 2);
    expect(readings.timeS[row]).toBeGreaterThan(19.5);
    expect(readings.timeS[row]).toBeLessThan(20.5);
  });

  test("[C3] a stop that is too short, creeps, turns or leans over is told and gives no row", () => {
    const pieces = [
      rest(0),
      go(1),
      rest(1, { seconds: 4 }),
      go(2),
      { seconds: 20, toM: 2.08 },
      go(3),
      rest(3, { turnDeg: 1 }),
      go(4),
      rest(4, { tiltChangeDeg: 0.5 }),
      go(5),
      rest(5),
    ];
    const { readings, passedOver } = condenseLog(logOf(pieces), { ...OPTIONS, closes: false });
    expect(readings.leg.map((leg, i) => `${leg} ${readings.depthM[i]!.toFixed(1)}`)).toEqual([
      "open 0.0",
      "down 0.0",
      "down 5.0",
    ]);
    expect(passedOver.map(({ depth, why }) => `${depth.toFixed(0)} ${why}`)).toEqual([
      "1 too-short",
      "2 depth",
      "3 turn",
      "4 tilt-change",
    ]);
  });

  test("[C3] a probe that still swings at first gives the later part of its stop", () => {
    const log = logOf([rest(0), go(1), rest(1, { seconds: 20 })]);
    const from = 16 * RATE_HZ;
    for (let i = from; i < from + 4 * RATE_HZ; i++)
      log.tiltXRad[i]! += 0.5 * DEGREE * Math.exp(-(i - from) / RATE_HZ);
    const { readings, stretches } = condenseLog(log, OPTIONS);
    const last = readings.count - 1;
    expect(Math.abs(readings.tiltXRad[last]! / DEGREE)).toBeLessThan(0.01);
    expect(stretches[last]!.fromRow).toBeGreaterThan(from + RATE_HZ);
  });

  test("[C3] turning the probe by hand at the top makes two readings of one stop; a tie holds at the later", () => {
    const turned = (turnDeg: number) => ({ seconds: 10, toM: 0, turnDeg });
    const pieces = [...downAndUp, turned(30), rest(0), go(1), rest(1), go(2), rest(2), go(0), rest(0)];
    const { readings } = condenseLog(logOf(pieces), { ...OPTIONS, ties: 1 });
    expect(readings.leg).toEqual([
      "open",
      "down",
      "down",
      "down",
      "up",
      "up",
      "tie",
      "down",
      "down",
      "down",
      "close",
    ]);
    const [up, tie] = [readings.leg.lastIndexOf("up"), readings.leg.indexOf("tie")];
    expect((readings.turnRad[tie]! - readings.turnRad[up]!) / DEGREE).toBeGreaterThan(29);
  });

  test("a change of face parts two stops; a tie holds on the face it came up with", () => {
    const second = { face: 2 };
    const pieces = [
      ...downAndUp.map((piece) => ({ ...piece, face: 1 })),
      { seconds: 10, toM: 0, turnDeg: 180, face: 1 },
      rest(0, second),
      { ...go(1), face: 2 },
      rest(1, second),
    ];
    const { readings } = condenseLog(logOf(pieces), { ...OPTIONS, ties: 1, closes: false });
    expect(readings.leg.map((leg, i) => `${leg}${readings.face[i]}`)).toEqual([
      "open1",
      "down1",
      "down1",
      "down1",
      "up1",
      "up1",
      "tie1",
      "down2",
      "down2",
    ]);
  });

  test("two rests at one station with a shake between them: the longer one counts, the other is told", () => {
    const pieces = [
      rest(0),
      go(1),
      rest(1, { seconds: 7 }),
      rest(1, { seconds: 4, turnDeg: 5 }),
      rest(1, { seconds: 15 }),
    ];
    const { readings, passedOver } = condenseLog(logOf(pieces), { ...OPTIONS, closes: false });
    expect(readings.count).toBe(3);
    expect(readings.samples[2]).toBeGreaterThan(12 * RATE_HZ);
    expect(passedOver.map(({ why }) => why)).toContain("same-place");
  });

  test("legs that the log names are kept, and part two stops", () => {
    const log = logOf([rest(0), rest(0), go(1), rest(1)]);
    const leg = Uint8Array.from(log.timeS, (time) => (time < 10 ? 1 : 2));
    const { readings } = condenseLog({ ...log, leg }, OPTIONS);
    expect(readings.leg).toEqual(["open", "down", "down"]);
  });

  test("counts stay counts; limits are taken in metres", () => {
    const log = logOf(downAndUp);
    const counted = {
      ...log,
      depthM: NONE,
      depthCounts: log.depthM.map((depth) => Math.round(depth * 4000)),
    };
    const { readings } = condenseLog(counted, { ...OPTIONS, metresPerCount: 1 / 4000 });
    expect(Array.from(readings.depthCounts)).toEqual([0, 0, 4000, 8000, 4000, 0, 0]);
    expect(readings.depthM.every(Number.isNaN)).toBe(true);
  });

  test("accelerations: the standard error comes as an angle whatever their unit", () => {
    const log = logOf([rest(0), go(1), rest(1, { tiltDeg: 2 })]);
    const acceleration = {
      ...log,
      measures: "acceleration-turn" as const,
      accX: log.tiltXRad.map((tilt) => 1000 * Math.sin(tilt)),
      accY: log.tiltYRad.map((tilt) => 1000 * Math.sin(tilt)),
      accZ: log.tiltXRad.map((tilt) => -1000 * Math.cos(tilt)),
      tiltXRad: NONE,
      tiltYRad: NONE,
    };
    const { readings } = condenseLog(acceleration, { ...OPTIONS, closes: false });
    expect(readings.accX[2]! / 1000).toBeCloseTo(Math.sin(2 * DEGREE), 3);
    expect(readings.seTiltXRad[2]! / DEGREE).toBeLessThan(0.005);
    expect(readings.seTiltXRad[2]! / DEGREE).toBeGreaterThan(0.001);
    expect(readings.tiltXRad[2]).toBeNaN();
  });

  test("a log without any rest, or without rows, gives no readings", () => {
    expect(
      condenseLog(
        logOf([
          { seconds: 1, toM: 0 },
          { seconds: 60, toM: 20 },
        ]),
        OPTIONS,
      ).readings.count,
    ).toBe(0);
    expect(condenseLog(logOf([{ seconds: 0, toM: 0 }]), OPTIONS).readings.count).toBe(0);
  });

  test("a missing depth, tilt or turn is never rest", () => {
    for (const name of ["depthM", "turnRad"] as const) {
      const log = logOf([rest(0)]);
      log[name].fill(Number.NaN);
      expect(condenseLog(log, OPTIONS).readings.count, name).toBe(0);
    }
    const log = logOf([rest(0)]);
    log.tiltYRad.fill(Number.NaN);
    expect(condenseLog(log, OPTIONS).readings.count).toBe(0);
  });
});
