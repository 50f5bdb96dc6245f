import { describe, expect, test } from "vitest";
import { type ContinuousLog, ContractError, condenseLog, ned, radiansFromDegrees, USUAL_STEADY } from "#core";
import { continuousLogText, simulateContinuousLog } from "./continuous-log.ts";
import type { RunSpec } from "./run-spec.ts";
import { simulateRun } from "./simulate-run.ts";

const exact = { north: "grid", standardUncertaintyDeg: 0 } as const;
const twoFaces = [
  { leg: "down", face: 1 },
  { leg: "up", face: 1 },
  { leg: "down", face: 2 },
  { leg: "up", face: 2 },
] as const;

const spec = (more: Partial<RunSpec> = {}): RunSpec => ({
  id: "R1",
  elementId: "P1",
  instrumentId: "probe",
  measures: "tilt-turn",
  hole: { shape: "arc", rakeDeg: 4, bearingDeg: 40, bendDegPerM: 0.06, towardsDeg: 130 },
  head: ned(0, 0, 0),
  site: { latitudeDeg: 51.5, convergenceDeg: -1.2, declinationDeg: 1.5 },
  stationsM: [0, 1, 2, 3, 4, 5, 6],
  passes: twoFaces,
  opening: { headingDeg: 40, ...exact },
  closing: { headingDeg: 130, ...exact },
  ...more,
});

const condensed = (log: ContinuousLog) =>
  condenseLog(log, { steady: USUAL_STEADY, metresPerCount: Number.NaN, closes: true, ties: 0 }).readings;

describe("simulateContinuousLog", () => {
  test.each(["tilt-turn", "acceleration-turn"] as const)(
    "[C3] without errors, %s: the rows found in the log are the stops of the same run, to the last digits",
    (measures) => {
      const one = spec({ measures });
      const stops = simulateRun(one, 3).run.readings;
      const rows = condensed(simulateContinuousLog(one, 3));
      for (let i = 0; i < rows.count; i++) {
        const leg = rows.leg[i]!;
        const same = stops.leg.findIndex(
          (each, k) =>
            each === leg &&
            stops.face[k] === rows.face[i] &&
            Math.abs(stops.depthM[k]! - rows.depthM[i]!) < 1e-6,
        );
        expect(same, `${leg} ${rows.depthM[i]}`).toBeGreaterThanOrEqual(0);
        for (const name of ["tiltXRad", "tiltYRad", "accX", "accY", "accZ"] as const) {
          if (Number.isNaN(stops[name][same]!)) expect(rows[name][i]).toBeNaN();
          else expect(Math.abs(rows[name][i]! - stops[name][same]!), `${name} ${i}`).toBeLessThan(1e-9);
        }
        // the two rows may belong to moments some seconds apart, in which only the earth turns
        const [dt, turned] = [
          rows.timeS[i]! - (stops.timeS[same]! + 5),
          rows.turnRad[i]! - stops.turnRad[same]!,
        ];
        expect(Math.abs(turned), `turn ${i}`).toBeLessThan(8e-5 * (Math.abs(dt) + 10));
      }
      // the toe, and the top between two passes, are one stop each in the log
      expect(rows.leg.filter((leg) => leg === "down")).toHaveLength(14);
      expect(rows.leg.filter((leg) => leg === "up").length).toBeGreaterThanOrEqual(12);
      expect([rows.leg[0], rows.leg.at(-1)]).toEqual(["open", "close"]);
    },
  );

  test("[C3] mean and standard error of tilts agree with what was put in, seeds 0 to 4", () => {
    const tiltNoiseDeg = 0.05;
    let squares = 0;
    let count = 0;
    for (let seed = 0; seed < 5; seed++) {
      const one = spec({ passes: twoFaces.slice(0, 2) });
      const truth = condensed(simulateContinuousLog(one, seed));
      const noisy = condensed(simulateContinuousLog({ ...one, errors: { tiltNoiseDeg } }, seed));
      expect(noisy.leg).toEqual(truth.leg);
      for (let i = 1; i < noisy.count; i++) {
        squares += ((noisy.tiltXRad[i]! - truth.tiltXRad[i]!) / noisy.seTiltXRad[i]!) ** 2;
        count++;
        const expected = radiansFromDegrees(tiltNoiseDeg) / Math.sqrt(noisy.samples[i]!);
        expect(noisy.seTiltXRad[i]! / expected, `seed ${seed}, row ${i}`).toBeLessThan(2.5);
        expect(noisy.seTiltXRad[i]! / expected, `seed ${seed}, row ${i}`).toBeGreaterThan(0.6);
      }
    }
    expect(Math.abs(squares / count - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
  });

  test("is the same for the same seed, and has a row every hundredth of a second", () => {
    const [a, b] = [simulateContinuousLog(spec(), 7), simulateContinuousLog(spec(), 7)];
    expect(a).toEqual(b);
    expect(a.timeS[250]).toBeCloseTo(2.5, 12);
  });

  test("is written as a readings file with the columns it has", () => {
    const text = continuousLogText(simulateContinuousLog(spec({ stationsM: [0, 1], countsPerM: 4000 }), 7), {
      tiltDeg: 0.001,
      turnDeg: 0.001,
    });
    const [head, first] = text.split("\n", 2);
    expect(head).toBe("time_s,count,tilt_x_deg,tilt_y_deg,turn_deg,face");
    expect(first).toMatch(/^0\.000,0,-?\d\.\d{3},-?\d\.\d{3},0\.000,1$/);
  });

  test("throws ContractError for a run without a gyro, or with faults it cannot make", () => {
    expect(() => simulateContinuousLog(spec({ measures: "keyed-tilt" }), 1)).toThrow(ContractError);
    expect(() => simulateContinuousLog(spec({ faults: [{ fault: "swapped-faces" }] }), 1)).toThrow(
      ContractError,
    );
    expect(() => simulateContinuousLog(spec(), 1, 0)).toThrow(ContractError);
  });
});
