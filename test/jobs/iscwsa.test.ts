import { describe, expect, test } from "vitest";
import {
  type Covariance,
  computePath,
  covarianceOf,
  type HolePath,
  interpolatePath,
  ned,
  radiansFromDegrees,
} from "#core";
import published from "../published/iscwsa-profile-1/case.json" with { type: "json" };
import { tangentsOfAngles } from "../support/tangents.ts";
import { type Weight, type WeightStation, weightOf } from "../support/well-survey-weights.ts";

const { field, stationIntervalM, leastSineOfInclination } = published;
const declinationRad = radiansFromDegrees(field.declinationDeg);
const magnetic = { ...field, dipRad: radiansFromDegrees(field.dipDeg) };
const deg = 180 / Math.PI;

/** The printed stations, and one every 30 m on the arcs between them. */
const whole = computePath(
  tangentsOfAngles(published.stations.map((row) => [row.depthM, row.inclinationDeg, row.azimuthTrueDeg])),
  ned(0, 0, 0),
  "minimum-curvature",
);

const stations: readonly WeightStation[] = (() => {
  const last = whole.depthM[whole.count - 1]!;
  const depths = Array.from({ length: Math.ceil(last / stationIntervalM) + 1 }, (_, i) =>
    Math.min(i * stationIntervalM, last),
  );
  return depths.map((depthM) => {
    const { position, tangent } = interpolatePath(whole, depthM);
    const sine = Math.hypot(tangent.north, tangent.east);
    const azimuthRad = sine < leastSineOfInclination ? 0 : Math.atan2(tangent.east, tangent.north);
    return {
      depthM,
      verticalM: position.down,
      inclinationRad: Math.atan2(Math.max(sine, leastSineOfInclination), tangent.down),
      magneticAzimuthRad: azimuthRad - declinationRad,
      toolfaceRad: 0,
    };
  });
})();

/** Where the legs from the station above to the station below end, with a station off by a little. */
function endOf(k: number, last: number, off: Weight): readonly [number, number, number] {
  const rows = [k - 1, k, k + 1]
    .filter((i) => i >= 0 && i <= last)
    .map((i) => {
      const { depthM, inclinationRad, magneticAzimuthRad } = stations[i]!;
      const moved = i === k ? off : { depth: 0, inclination: 0, azimuth: 0 };
      return [
        depthM + moved.depth,
        (inclinationRad + moved.inclination) * deg,
        (magneticAzimuthRad + declinationRad + moved.azimuth) * deg,
      ] as const;
    });
  const path: HolePath = computePath(tangentsOfAngles(rows), ned(0, 0, 0), "balanced-tangential");
  const end = path.count - 1;
  return [path.northM[end]!, path.eastM[end]!, path.downM[end]!];
}

const NUDGE = { depth: 0.01, inclination: 1e-4, azimuth: 1e-4 };

/** Move of a station's end point for one unit of depth, inclination and azimuth, by moving it and adding the path up again. */
function derivativesOf(k: number, last: number) {
  const by = (what: keyof Weight) => {
    const none = { depth: 0, inclination: 0, azimuth: 0 };
    const up = endOf(k, last, { ...none, [what]: NUDGE[what] });
    const down = endOf(k, last, { ...none, [what]: -NUDGE[what] });
    return up.map((value, axis) => (value - down[axis]!) / (2 * NUDGE[what]));
  };
  return { depth: by("depth"), inclination: by("inclination"), azimuth: by("azimuth") };
}

/** Covariance at a station: every source one unit of chance a station (random) or one for the whole survey. */
function covarianceAt(depthM: number): Covariance {
  const last = stations.findIndex((station) => station.depthM === depthM);
  const derivatives = stations.slice(0, last + 1).map((_, k) => derivativesOf(k, last));
  const effects = published.terms.map(({ code, magnitude, unit, propagation }) => {
    const standard = unit.startsWith("deg") ? magnitude / deg : magnitude;
    const values = new Float64Array(3 * (last + 1));
    for (let k = 1; k <= last; k++) {
      const weight = weightOf(code, stations[k]!, magnetic);
      const at = derivatives[k]!;
      for (let axis = 0; axis < 3; axis++) {
        const move =
          standard *
          (at.depth[axis]! * weight.depth +
            at.inclination[axis]! * weight.inclination +
            at.azimuth[axis]! * weight.azimuth);
        values[propagation === "random" ? 3 * k + axis : axis]! += move;
      }
    }
    return { values };
  });
  return covarianceOf(effects);
}

/** Standard deviations towards the high side, to the right of it and along the hole. */
function inHoleAxes(covariance: Covariance, station: WeightStation) {
  const [nn, ne, nd, ee, ed, dd] = covariance;
  const azimuth = station.magneticAzimuthRad + declinationRad;
  const [sI, cI] = [Math.sin(station.inclinationRad), Math.cos(station.inclinationRad)];
  const [sA, cA] = [Math.sin(azimuth), Math.cos(azimuth)];
  const along = (n: number, e: number, d: number) =>
    Math.sqrt(n * n * nn + e * e * ee + d * d * dd + 2 * (n * e * ne + n * d * nd + e * d * ed));
  return {
    highsideM: along(cI * cA, cI * sA, -sI),
    lateralM: along(-sA, cA, 0),
    alongM: along(sI * cA, sI * sA, cI),
  };
}

const at = (depthM: number) =>
  inHoleAxes(covarianceAt(depthM), stations.find((station) => station.depthM === depthM)!);

describe("[E2] standard profile 1 of the well-survey error model", () => {
  test("published: 20.116, 84.342 and 8.626 m at 8000 m", () => {
    const { depthM, half, ...expected } = published.published;
    const found = at(depthM);
    for (const [name, value] of Object.entries(expected))
      expect(Math.abs(found[name as keyof typeof found] - value), name).toBeLessThanOrEqual(half);
  });

  test("computed elsewhere: the covariance at 8000 m", () => {
    const found = covarianceAt(published.published.depthM);
    for (const [i, value] of Object.values(published.computed.covarianceNedM2).entries())
      expect(Math.abs(found[i]! - value)).toBeLessThanOrEqual(published.computed.half);
  });

  test.each(published.computed.byDepth)("computed elsewhere: at $depthM m", ({ depthM, ...expected }) => {
    const found = at(depthM);
    for (const [name, value] of Object.entries(expected))
      expect(Math.abs(found[name as keyof typeof found] - value), name).toBeLessThanOrEqual(
        published.published.half,
      );
  });
});
