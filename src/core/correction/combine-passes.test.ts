import { describe, expect, test } from "vitest";
import { combinePasses, leadingPass, type PassTangents, sameStopM, usualInterval } from "./combine-passes.ts";

interface Station {
  readonly depthM: number;
  readonly north: number;
  readonly east?: number;
  readonly sigma?: number;
}

/** A pass from the north and east parts of its directions; sigma is the standard deviation of each, 0.001 if not given. */
function passOf(name: string, stations: readonly Station[], face = 0): PassTangents {
  return {
    name,
    face,
    depthM: Float64Array.from(stations, (each) => each.depthM),
    north: Float64Array.from(stations, (each) => each.north),
    east: Float64Array.from(stations, (each) => each.east ?? 0),
    down: Float64Array.from(stations, (each) => Math.sqrt(1 - each.north ** 2 - (each.east ?? 0) ** 2)),
    variance: Float64Array.from(stations, (each) => (each.sigma ?? 0.001) ** 2),
    sharedVariance: new Float64Array(stations.length),
  };
}
const at = (depths: readonly number[], north: (depthM: number) => number, sigma = 0.001): Station[] =>
  depths.map((depthM) => ({ depthM, north: north(depthM), sigma }));
const depths = [0, 1, 2, 3, 4, 5];

describe("[D5] several passes of one hole", () => {
  test("one pass alone comes out as it went in, and nothing can disagree", () => {
    const pass = passOf(
      "down",
      at(depths, (d) => d / 100),
    );
    const { profile, agreement, passesAt } = combinePasses([pass]);
    expect([...profile.north].map((value, i) => Math.abs(value - pass.north[i]!) < 1e-16)).not.toContain(
      false,
    );
    expect(agreement).toMatchObject({ degreesOfFreedom: 0, chiSquare: 0 });
    expect([...passesAt]).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test("weighted mean by inverse variance: 0.010 at 1 mrad and 0.016 at 2 mrad give 0.0112", () => {
    const { profile, agreement, contributions } = combinePasses([
      passOf(
        "a",
        at(depths, () => 0.01, 0.001),
      ),
      passOf(
        "b",
        at(depths, () => 0.016, 0.002),
      ),
    ]);
    // direction of the mean of unit vectors: within 1e-7 of the mean of the lateral parts
    for (const north of profile.north) expect(north).toBeCloseTo(0.0112, 6);
    // (0.006)^2 / (0.001^2 + 0.002^2) = 7.2 a stop in north, 0 in east
    expect(agreement.chiSquare).toBeCloseTo(6 * 7.2, 9);
    expect(agreement.degreesOfFreedom).toBe(12);
    expect(agreement.largestNormalised).toBeCloseTo(Math.sqrt(7.2), 9);
    expect(contributions.filter((each) => each.station === 2).map((each) => each.share)).toEqual([0.8, 0.2]);
  });

  test("[C2] both faces have half the weight each, however often each was read", () => {
    const zero = 0.004;
    const { profile } = combinePasses([
      passOf(
        "face 1",
        at(depths, () => 0.02 + zero),
        1,
      ),
      passOf(
        "face 1 again",
        at(depths, () => 0.02 + zero),
        1,
      ),
      passOf(
        "face 2",
        at(depths, () => 0.02 - zero),
        2,
      ),
    ]);
    for (const north of profile.north) expect(north).toBeCloseTo(0.02, 6);
  });

  test("a pass that names no face is weighed beside the two faces", () => {
    const { profile } = combinePasses([
      passOf(
        "face 1",
        at(depths, () => 0.02),
        1,
      ),
      passOf(
        "face 2",
        at(depths, () => 0.02),
        2,
      ),
      passOf(
        "no face",
        at(depths, () => 0.026),
        0,
      ),
    ]);
    for (const north of profile.north) expect(north).toBeCloseTo(0.022, 6);
  });

  test("stops that only one pass has are kept, with that pass alone", () => {
    const { profile, passesAt } = combinePasses([
      passOf(
        "down",
        at([0, 1, 3, 4, 5, 6], () => 0.01),
      ),
      passOf(
        "up",
        at([1, 2, 5, 7], () => 0.03),
      ),
    ]);
    expect([...profile.depthM]).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect([...passesAt]).toEqual([1, 2, 1, 1, 1, 2, 1, 1]);
    expect(profile.north[2]).toBeCloseTo(0.03, 15);
    expect(profile.north[5]).toBeCloseTo(0.02, 5);
  });

  test("a pass read 3 cm deeper is taken at the stop's depth, on its own line between its stations", () => {
    const bend = (depthM: number) => 0.002 * depthM;
    const { profile, agreement, passesAt } = combinePasses([
      passOf("down", at(depths, bend)),
      passOf(
        "up",
        at(
          depths.map((depthM) => depthM + 0.03),
          bend,
        ),
      ),
    ]);
    expect([...profile.depthM]).toEqual(depths);
    expect([...passesAt]).toEqual([2, 2, 2, 2, 2, 2]);
    // all but the top, where the shifted pass begins below the stop and nothing is extrapolated
    for (let i = 1; i < depths.length; i++) expect(profile.north[i]).toBeCloseTo(bend(depths[i]!), 7);
    expect(profile.north[0]).toBeCloseTo(bend(0.03) / 2, 9);
    expect(agreement.largestDepthM).toBe(0);
  });

  test("a blunder shows as the largest normalised residual, at its depth and in its pass", () => {
    const sound = (d: number) => 0.01 + 0.0001 * Math.sin(3 * d);
    const { agreement } = combinePasses([
      passOf("down", at(depths, sound)),
      passOf(
        "up",
        at(depths, (d) => sound(d) + (d === 4 ? 0.02 : 0)),
      ),
      passOf(
        "again",
        at(depths, (d) => sound(d) - 0.0002),
      ),
    ]);
    expect(agreement).toMatchObject({ largestDepthM: 4, largestPass: "up", degreesOfFreedom: 24 });
    // residual 0.02 - (0.02 - 0.0002) / 3 over 0.001 sqrt(2/3)
    expect(agreement.largestNormalised).toBeCloseTo(
      (0.02 - (0.02 - 0.0002) / 3) / (0.001 * Math.sqrt(2 / 3)),
      6,
    );
  });

  test("chi-square of passes that differ by their noise alone is near its degrees of freedom (seed 7)", () => {
    let state = 7;
    const uniform = () => {
      state = (state * 16807) % 2147483647;
      return state / 2147483647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const many = Array.from({ length: 400 }, (_, i) => i / 2);
    const noisy = (name: string, sigma: number, face: number) =>
      passOf(
        name,
        many.map((depthM) => ({ depthM, north: 0.02 + sigma * normal(), east: sigma * normal(), sigma })),
        face,
      );
    const { agreement } = combinePasses([noisy("a", 1e-4, 1), noisy("b", 1e-4, 1), noisy("c", 3e-4, 2)]);
    expect(agreement.degreesOfFreedom).toBe(1600);
    // standard deviation of the ratio is sqrt(2 / 1600) = 0.035
    expect(Math.abs(agreement.chiSquare / 1600 - 1)).toBeLessThan(0.12);
    expect(agreement.largestNormalised).toBeLessThan(5);
  });

  test("where every pass is silent the direction is missing, never 0", () => {
    const { profile, passesAt } = combinePasses([
      passOf(
        "down",
        at(depths, (d) => (d === 2 ? Number.NaN : 0.01)),
      ),
      passOf(
        "up",
        at([0, 1, 2], (d) => (d === 2 ? Number.NaN : 0.01)),
      ),
    ]);
    expect([profile.north[2], profile.east[2], profile.down[2]]).toEqual([
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ]);
    expect([...passesAt]).toEqual([2, 2, 0, 1, 1, 1]);
    expect([...profile.north].filter(Number.isNaN)).toHaveLength(1);
  });

  test("a silent neighbour spoils nothing: the pass is taken as it was read", () => {
    const { profile } = combinePasses([
      passOf(
        "down",
        at(depths, () => 0.01),
      ),
      passOf("up", [
        { depthM: 2.02, north: 0.01 },
        { depthM: 3.02, north: Number.NaN },
        { depthM: 4, north: 0.01 },
      ]),
    ]);
    for (const north of profile.north) expect(north).toBeCloseTo(0.01, 12);
  });

  test("the order in which passes are given changes no more than rounding", () => {
    const passes = [
      passOf(
        "down",
        at(depths, (d) => 0.01 * Math.sin(d)),
      ),
      passOf(
        "up",
        at(
          depths.map((d) => d + 0.02),
          (d) => 0.011 * Math.sin(d),
        ),
      ),
      passOf(
        "again",
        at([0.5, 2.5], (d) => 0.012 * Math.sin(d), 0.0005),
      ),
    ];
    const one = combinePasses(passes).profile;
    const other = combinePasses([passes[0]!, passes[2]!, passes[1]!]).profile;
    expect([...other.depthM]).toEqual([...one.depthM]);
    for (let i = 0; i < one.depthM.length; i++) expect(other.north[i]).toBeCloseTo(one.north[i]!, 14);
  });
});

describe("stops", () => {
  test("the usual interval is the median, so that one gap changes nothing", () => {
    expect(usualInterval(Float64Array.from([0, 0.5, 1, 1.5, 9]))).toBe(0.5);
    expect(usualInterval(Float64Array.from([3]))).toBeNaN();
  });

  test.each([
    [0.02, 0.01],
    [0.5, 0.125],
    [5, 0.25],
    [Number.NaN, 0.01],
  ])("interval %f m: depths within %f m are one stop", (interval, tolerance) => {
    expect(sameStopM(interval)).toBeCloseTo(tolerance, 15);
  });

  test("a detail read closely does not lead, nor do three check stations down the whole hole", () => {
    const main = passOf(
      "main",
      at(
        Array.from({ length: 31 }, (_, i) => i),
        () => 0,
      ),
    );
    const detail = passOf(
      "detail",
      at(
        Array.from({ length: 41 }, (_, i) => i / 4),
        () => 0,
      ),
    );
    const checks = passOf(
      "checks",
      at([0, 15, 30.2], () => 0),
    );
    expect(leadingPass([detail, checks, main]).name).toBe("main");
  });
});
