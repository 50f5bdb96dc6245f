import { describe, expect, test } from "vitest";
import { dot, EARTH_RATE_RAD_PER_S, ned, radiansFromDegrees } from "#core";
import { type HoleShape, tangentOf } from "./hole-shape.ts";
import { attitudeFromHeading, levelledHeading } from "./levelled-heading.ts";
import {
  earthRateVector,
  moveProbe,
  type ProbeState,
  restProbe,
  type Surroundings,
  turnProbe,
} from "./probe-motion.ts";
import { inverse, rotate } from "./rotation.ts";

const NO_EARTH = ned(0, 0, 0);

function around(hole: HoleShape, more: Partial<Surroundings> = {}): Surroundings {
  return { tangentAt: tangentOf(hole), spinRadPerM: () => 0, earthRadPerS: NO_EARTH, stepM: 0.025, ...more };
}

function atTop(where: Surroundings, headingRad: number): ProbeState {
  const attitude = attitudeFromHeading(headingRad, where.tangentAt(0).tangent);
  return { attitude, depthM: 0, travelM: 0, timeS: 0, turnRad: 0 };
}

const headingIn = (state: ProbeState, where: Surroundings): number =>
  levelledHeading(state.attitude, where.tangentAt(state.depthM).tangent);

const wobblySpin = (travel: number): number =>
  0.7 + 0.5 * Math.cos(1.9 * travel) + 0.3 * Math.cos(0.6 * travel + 1);
const WANDERING: HoleShape = {
  shape: "wandering-bearing",
  rakeDeg: 15,
  bearingDeg: 70,
  amplitudeDeg: 30,
  wavelengthM: 12,
  phaseDeg: 20,
  turnDegPerM: 0,
};

/** Lowers in moves of half a metre with stops of 10 s, as in a run. */
function lower(where: Surroundings, toM: number): ProbeState {
  let state = atTop(where, 0.4);
  for (let depth = 0.5; depth <= toM; depth += 0.5)
    state = restProbe(moveProbe(state, depth, 1.7, where), 10, where);
  return state;
}

describe("moveProbe", () => {
  test("[A4] in a plumb hole the gyro shows the spin and nothing else", () => {
    const where = around({ shape: "straight", rakeDeg: 0, bearingDeg: 0 }, { spinRadPerM: wobblySpin });
    const end = moveProbe(atTop(where, 0.25), 20, 66, where);
    const spun =
      0.7 * 20 + (0.5 / 1.9) * Math.sin(1.9 * 20) + (0.3 / 0.6) * (Math.sin(0.6 * 20 + 1) - Math.sin(1));
    expect(end.turnRad).toBeCloseTo(spun, 8);
    const error = headingIn(end, where) - (0.25 + spun);
    expect(Math.abs(Math.sin(error / 2))).toBeLessThan(1e-8);
  });

  test("[A5] standing plumb it shows the earth's turn: -11.771 degrees in one hour at 51.5 north", () => {
    const earthRadPerS = earthRateVector(radiansFromDegrees(51.5), 0);
    const where = around({ shape: "straight", rakeDeg: 0, bearingDeg: 0 }, { earthRadPerS });
    const hour = restProbe(atTop(where, 1), 3600, where).turnRad / radiansFromDegrees(1);
    expect(hour).toBeCloseTo(-11.771, 3);
    // 1e-5 degrees: the table gives 15.0411 degrees an hour for the pole
    const pole = EARTH_RATE_RAD_PER_S * (3600 / radiansFromDegrees(1));
    expect(pole).toBeCloseTo(15.0411, 4);
  });

  test.each([
    [10, 0, -9.967],
    [10, 90, -11.592],
    [20, 180, -14.264],
    [30, 45, -6.884],
  ])(
    "[A5] standing at %d degrees towards %d it shows the earth's turn about its axis",
    (rake, bearing, shown) => {
      const earthRadPerS = earthRateVector(radiansFromDegrees(51.5), 0);
      const where = around({ shape: "straight", rakeDeg: rake, bearingDeg: bearing }, { earthRadPerS });
      const moving = moveProbe(atTop(where, 0), 30, 1800, where);
      const hour = restProbe(moving, 1800, where).turnRad / radiansFromDegrees(1);
      expect(hour).toBeCloseTo(shown, 3);
    },
  );

  test("puts true north to the left of grid north where the convergence is positive", () => {
    const earth = earthRateVector(radiansFromDegrees(50), radiansFromDegrees(2));
    expect(Math.atan2(earth.east, earth.north)).toBeCloseTo(radiansFromDegrees(-2), 12);
  });

  // An axis that goes once round a cone without turning about itself comes back turned by the solid angle it went
  // round, in the sense it went round (Gauss and Bonnet); table of 360 (1 - cos I).
  test.each([
    [1, 0.055],
    [2, 0.219],
    [5, 1.37],
    [10, 5.469],
  ])(
    "[A4] coning at %d degrees turns the heading by %d degrees for each turn of bearing",
    (rake, degrees) => {
      const cone = (turnDegPerM: number): number => {
        const where = around({
          shape: "wandering-bearing",
          rakeDeg: rake,
          bearingDeg: 25,
          amplitudeDeg: 0,
          wavelengthM: 10,
          phaseDeg: 0,
          turnDegPerM,
        });
        const end = moveProbe(atTop(where, 0.1), 36, 120, where);
        expect(end.turnRad).toBeCloseTo(0, 12);
        return (headingIn(end, where) - 0.1) / radiansFromDegrees(1);
      };
      expect(cone(10)).toBeCloseTo(degrees, 3);
      expect(cone(10)).toBeCloseTo(360 * (1 - Math.cos(radiansFromDegrees(rake))), 6);
      expect(cone(-10)).toBeCloseTo(-cone(10), 6);
    },
  );

  test("[A4] the gyro's rate is that of the tool face plus cos I times that of the bearing", () => {
    const where = around(WANDERING, { spinRadPerM: wobblySpin });
    const toolFace = (state: ProbeState): number => {
      const down = rotate(inverse(state.attitude), ned(0, 0, 1));
      return Math.atan2(-down.east, -down.north);
    };
    const bearing = (depth: number): number => {
      const { tangent } = where.tangentAt(depth);
      return Math.atan2(tangent.east, tangent.north);
    };
    const start = atTop(where, 0.4);
    const end = lower(where, 30);
    const expected =
      -(toolFace(end) - toolFace(start)) + Math.cos(radiansFromDegrees(15)) * (bearing(30) - bearing(0));
    const turns = (end.turnRad - expected) / (2 * Math.PI);
    expect(Math.abs(turns - Math.round(turns)) * 2 * Math.PI).toBeLessThan(1e-7);
  });

  test("is exact to 1e-7 rad over a run of 40 m, checked against steps four times finer", () => {
    const earthRadPerS = earthRateVector(radiansFromDegrees(51.5), 0.02);
    const coarse = around(WANDERING, { spinRadPerM: wobblySpin, earthRadPerS });
    const fine = { ...coarse, stepM: coarse.stepM / 4 };
    const [a, b] = [lower(coarse, 40), lower(fine, 40)];
    expect(Math.abs(a.turnRad - b.turnRad)).toBeLessThan(1e-7);
    const x = ned(1, 0, 0);
    expect(dot(rotate(a.attitude, x), rotate(b.attitude, x))).toBeGreaterThan(1 - 0.5 * 1e-7 ** 2 - 1e-15);
    expect(Math.abs(headingIn(a, coarse) - headingIn(b, fine))).toBeLessThan(1e-7);
  });

  test("errors fall with the fourth power of the step", () => {
    const headingWith = (stepM: number): number => {
      const where = around(WANDERING, { spinRadPerM: wobblySpin, stepM });
      return headingIn(moveProbe(atTop(where, 0.4), 20, 66, where), where);
    };
    const best = headingWith(0.01);
    const ratio = Math.abs(headingWith(0.4) - best) / Math.abs(headingWith(0.2) - best);
    expect(ratio).toBeGreaterThan(12);
    expect(ratio).toBeLessThan(20);
  });

  test("comes back with the heading it went down with when it does not spin", () => {
    const where = around(WANDERING);
    const start = atTop(where, 1);
    const back = moveProbe(moveProbe(start, 33, 110, where), 0, 110, where);
    expect(headingIn(back, where)).toBeCloseTo(1, 8);
    expect(back.travelM).toBe(66);
  });

  test("keeps probe z on the hole axis", () => {
    const where = around(WANDERING, { spinRadPerM: wobblySpin });
    const end = lower(where, 25);
    const z = rotate(end.attitude, ned(0, 0, 1));
    const { tangent } = where.tangentAt(25);
    expect(Math.hypot(z.north - tangent.north, z.east - tangent.east, z.down - tangent.down)).toBeLessThan(
      1e-13,
    );
  });
});

test("turnProbe turns clockwise looking down and the gyro counts it", () => {
  const where = around({ shape: "straight", rakeDeg: 15, bearingDeg: 10 });
  const end = turnProbe(atTop(where, 0.3), 0.5, 20, where);
  expect(end.turnRad).toBeCloseTo(0.5, 12);
  expect(headingIn(end, where)).toBeCloseTo(0.8, 12);
});
