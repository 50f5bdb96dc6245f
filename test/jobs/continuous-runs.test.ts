import { describe, expect, test } from "vitest";
import { condenseLog, ned, USUAL_STEADY } from "#core";
import { type RunSpec, simulateContinuousLog, simulateRun } from "#simulator";
import { holeOfChance, largestError, reduced, siteDeg, stationsTo } from "./truth-trials.ts";

const head = ned(5_712_000, 431_000, -12.4);
const exact = { north: "grid", standardUncertaintyDeg: 0, errorDeg: 0 } as const;

function specOf(seed: number, more: Partial<RunSpec> = {}): RunSpec {
  const { hole } = holeOfChance(seed);
  return {
    id: "run",
    elementId: "hole",
    instrumentId: "probe",
    head,
    site: siteDeg,
    measures: seed % 2 === 0 ? "tilt-turn" : "acceleration-turn",
    hole,
    stationsM: stationsTo(20, 1),
    passes: [
      { leg: "down", face: 1 },
      { leg: "up", face: 1 },
    ],
    opening: { headingDeg: 77, ...exact },
    closing: { headingDeg: 200 + seed, ...exact },
    ...more,
  };
}

/** The same run read stop by stop, and found in its log. */
function bothWays(spec: RunSpec, seed: number, rateHz: number) {
  const simulated = simulateRun(spec, seed);
  const log = simulateContinuousLog(spec, seed, rateHz);
  const { readings, passedOver } = condenseLog(log, {
    steady: USUAL_STEADY,
    metresPerCount: Number.NaN,
    closes: true,
    ties: 0,
  });
  const found = { run: { ...simulated.run, readings } };
  return {
    simulated,
    readings,
    passedOver,
    stops: reduced(simulated, spec).result,
    log: reduced(found, spec).result,
  };
}

describe("a run logged continuously", () => {
  test("[C3] without errors the path is the one of the same run read stop by stop, seeds 0 to 5", () => {
    for (let seed = 0; seed < 6; seed++) {
      const { stops, log, simulated, passedOver } = bothWays(specOf(seed), seed, 20);
      expect(passedOver, `seed ${seed}`).toEqual([]);
      const [read, found] = [stops, log].map((each) => largestError(each.path!, simulated.truth.path));
      expect(found!, `seed ${seed}: ${read} m and ${found} m from the truth`).toBeLessThan(read! + 2e-4);
      expect(largestError(log.path!, stops.path!), `seed ${seed}`).toBeLessThan(3e-4);
    }
  });

  test("[C3] with the noise of a good sensor the toe stays within what averaging leaves, seeds 0 to 3", () => {
    // 0.05 degrees a row at 100 Hz, averaged over 9 s: 0.0017 degrees a stop, 0.03 mm a metre; twenty of them 0.13 mm
    const errors = { tiltNoiseDeg: 0.05, gyroWalkDegPerRootH: 0.02 };
    for (let seed = 0; seed < 4; seed++) {
      const plain = bothWays(specOf(seed), seed, 20);
      const noisy = bothWays(specOf(seed, { errors }), seed, 100);
      expect(noisy.readings.leg, `seed ${seed}`).toEqual(plain.readings.leg);
      expect(largestError(noisy.log.path!, plain.log.path!), `seed ${seed}`).toBeLessThan(0.003);
    }
  });
});
