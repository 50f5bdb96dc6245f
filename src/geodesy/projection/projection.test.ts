import { describe, expect, test } from "vitest";
import { degreesFromRadians, RADIANS_PER_DEGREE } from "#core";
import others from "../../../test/published/map-projections/case.json" with { type: "json" };
import published from "../../../test/published/transverse-mercator/case.json" with { type: "json" };
import { radiansFromDms } from "../../../test/support/angles.ts";
import { valueFrom } from "../../../test/support/results.ts";
import { findCrs, listCrs } from "../epsg/find-crs.ts";
import { projectionFor, projectionOf } from "./projection.ts";

const SECOND = RADIANS_PER_DEGREE / 3600;

type Point = (typeof published.points)[number];

/** The printed parameters, as a definition of their own. */
function projectionFrom(point: Point) {
  const [a, rf] = point.ellipsoid;
  const [lat0, lon0] = point.origin;
  const [x0, y0] = point.falseOrigin;
  return projectionOf({
    crs: "printed",
    name: point.name,
    projection: `+proj=tmerc +lat_0=${lat0} +lon_0=${lon0} +k=${point.k0} +x_0=${x0} +y_0=${y0} +a=${a} +rf=${rf}`,
    area: { southDeg: -80, westDeg: (lon0 ?? 0) - 4, northDeg: 80, eastDeg: (lon0 ?? 0) + 4 },
    datumShift: { kind: "own" },
  });
}

const placeOf = (point: { latitude: string; longitude: string }) => ({
  latitudeRad: radiansFromDms(point.latitude),
  longitudeRad: radiansFromDms(point.longitude),
});

describe("published transverse Mercator points", () => {
  test.each(published.points.map((point) => [point.name, point] as const))("%s", (_name, point) => {
    const projection = projectionFrom(point);
    const tolerance = point.name.includes("rounded") ? 0.004 : 0.001;
    const { east, north } = projection.forward(placeOf(point));
    expect(Math.abs(east - point.east)).toBeLessThan(tolerance);
    expect(Math.abs(north - point.north)).toBeLessThan(tolerance);
    const back = projection.inverse(point);
    expect(Math.abs(back.latitudeRad - radiansFromDms(point.latitude)) * 6.4e6).toBeLessThan(tolerance);
    expect(Math.abs(back.longitudeRad - radiansFromDms(point.longitude)) * 6.4e6).toBeLessThan(2 * tolerance);
  });

  const withNorth = published.points.filter((point) => point.trueNorthInGrid !== null);

  test("[C6] three of them state convergence and scale", () => {
    expect(withNorth.map((point) => point.name)).toHaveLength(3);
  });

  test.each(withNorth.map((point) => [point.name, point] as const))(
    "[C6] convergence and scale, %s",
    (_name, point) => {
      const local = projectionFrom(point).at(placeOf(point));
      const printed = -radiansFromDms(point.trueNorthInGrid ?? "");
      expect(Math.abs(local.convergenceRad - printed)).toBeLessThan(0.01 * SECOND);
      expect(Math.abs(local.scale - (point.scale ?? Number.NaN))).toBeLessThan(1e-8);
      expect(local.distortionRad).toBeLessThan(1e-8);
    },
  );
});

describe("published points of other projections", () => {
  test.each(others.points.map((point) => [point.method, point] as const))("%s", (_name, point) => {
    const projection = valueFrom(projectionFor(point.crs));
    const { east, north } = projection.forward(placeOf(point));
    expect(Math.abs(east / point.metresPerUnit - point.east)).toBeLessThan(point.tolerance);
    expect(Math.abs(north / point.metresPerUnit - point.north)).toBeLessThan(point.tolerance);
  });
});

/** The oblique Mercator of the library throws on points far away. */
const isOblique = (crs: string): boolean => valueFrom(findCrs(crs)).projection.includes("omerc");

describe("every grid of the table", () => {
  /** Places of the area at fractions of its width and height. */
  const fractions = [
    [0.5, 0.5],
    [0.2, 0.3],
    [0.8, 0.7],
  ] as const;

  test("reaches its area, comes back within 1 mm, and turns all bearings alike within 0.05 degrees", () => {
    const bad: string[] = [];
    for (const crs of listCrs()) {
      const { area } = valueFrom(findCrs(crs));
      const projection = valueFrom(projectionFor(crs));
      const width = (area.eastDeg - area.westDeg + 360) % 360 || 360;
      for (const [acrossFraction, upFraction] of fractions) {
        const longitudeRad = ((((area.westDeg + acrossFraction * width + 540) % 360) - 180) * Math.PI) / 180;
        const latitudeRad =
          (area.southDeg + upFraction * (area.northDeg - area.southDeg)) * RADIANS_PER_DEGREE;
        const point = projection.forward({ latitudeRad, longitudeRad });
        const back = projection.inverse(point);
        const apart =
          6.4e6 *
          Math.hypot(
            back.latitudeRad - latitudeRad,
            Math.sin((back.longitudeRad - longitudeRad) / 2) * 2 * Math.cos(latitudeRad),
          );
        const local = projection.at({ latitudeRad, longitudeRad });
        const good =
          apart < 0.001 &&
          Number.isFinite(local.convergenceRad) &&
          local.scale > 0.9 &&
          local.scale < 1.6 &&
          degreesFromRadians(local.distortionRad) < 0.06;
        if (!good) bad.push(`${crs} ${apart} ${local.scale} ${degreesFromRadians(local.distortionRad)}`);
      }
    }
    expect(bad).toEqual([]);
    expect(listCrs().length).toBeGreaterThan(5000);
  });

  test("answers NaN, or a place, to whatever it is asked", () => {
    const odd: string[] = [];
    for (const crs of listCrs().filter((crs, index) => index % 7 === 0 || isOblique(crs))) {
      const projection = valueFrom(projectionFor(crs));
      for (const east of [0, 1e6, -1.9e7, 6e7, 1e9, 1e300, Number.POSITIVE_INFINITY])
        for (const north of [0, 5e6, -1e7, 1e8, -1e300]) {
          const { latitudeRad } = projection.inverse({ east, north });
          if (!(Number.isNaN(latitudeRad) || Math.abs(latitudeRad) <= Math.PI / 2))
            odd.push(`${crs} ${east} ${north} ${latitudeRad}`);
        }
    }
    expect(odd).toEqual([]);
  });

  test("is listed once, in the order of the codes", () => {
    const codes = listCrs().map((crs) => Number(crs.slice(5)));
    expect(codes).toEqual([...new Set(codes)].sort((a, b) => a - b));
  });
});

test("missing numbers give NaN, never a place", () => {
  const projection = valueFrom(projectionFor("EPSG:32631"));
  expect(projection.forward({ latitudeRad: Number.NaN, longitudeRad: 0 })).toEqual({ east: NaN, north: NaN });
  expect(projection.forward({ latitudeRad: 0.9, longitudeRad: Number.POSITIVE_INFINITY })).toEqual({
    east: NaN,
    north: NaN,
  });
  expect(projection.inverse({ east: Number.NaN, north: 0 })).toEqual({ latitudeRad: NaN, longitudeRad: NaN });
  expect(projection.at({ latitudeRad: Number.NaN, longitudeRad: 0 }).convergenceRad).toBeNaN();
  expect(projection.at({ latitudeRad: Math.PI / 2, longitudeRad: 0 }).convergenceRad).toBeNaN();
});
