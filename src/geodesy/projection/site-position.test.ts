import { describe, expect, test } from "vitest";
import { degreesFromRadians, type Issue, RADIANS_PER_DEGREE, type Result } from "#core";
import published from "../../../test/published/transverse-mercator/case.json" with { type: "json" };
import { radiansFromDms } from "../../../test/support/angles.ts";
import { codesOf, valueFrom } from "../../../test/support/results.ts";
import { gridConvergence, gridFromWgs84, type SitePosition, sitePosition } from "./site-position.ts";

const SECOND = RADIANS_PER_DEGREE / 3600;
const at = (crs: string, latitudeDeg: number, longitudeDeg: number): Result<SitePosition, readonly Issue[]> =>
  gridConvergence(crs, latitudeDeg * RADIANS_PER_DEGREE, longitudeDeg * RADIANS_PER_DEGREE);

describe("[C6] convergence by EPSG code", () => {
  test("Flinders Peak on MGA94 zone 55 (EPSG:28355), from its coordinates", () => {
    const site = valueFrom(sitePosition("EPSG:28355", 273741.297, 5796489.777));
    expect(Math.abs(site.convergenceRad - radiansFromDms("1 35 03.65"))).toBeLessThan(0.01 * SECOND);
    expect(Math.abs(site.scale - 1.00023056)).toBeLessThan(1e-8);
    expect(Math.abs(site.latitudeRad - radiansFromDms("37 57 03.72030 S")) / SECOND).toBeLessThan(3e-5);
    expect(Math.abs(site.longitudeRad - radiansFromDms("144 25 29.52442 E")) / SECOND).toBeLessThan(3e-5);
    expect(site.warnings).toEqual([]);
  });

  test("positive east of the central meridian in the north, negative west of it, the other way round in the south", () => {
    expect(valueFrom(at("EPSG:32631", 51.5, 4)).convergenceRad).toBeGreaterThan(0.01);
    expect(valueFrom(at("EPSG:32631", 51.5, 2)).convergenceRad).toBeLessThan(-0.01);
    expect(valueFrom(at("EPSG:32731", -51.5, 4)).convergenceRad).toBeLessThan(-0.01);
    expect(Math.abs(valueFrom(at("EPSG:32631", 51.5, 3)).convergenceRad)).toBeLessThan(1e-12);
  });

  test("to first order it is (longitude - meridian) times sin(latitude)", () => {
    const convergence = valueFrom(at("EPSG:32631", 51.5, 3.1)).convergenceRad;
    expect(convergence / (0.1 * RADIANS_PER_DEGREE * Math.sin(51.5 * RADIANS_PER_DEGREE))).toBeCloseTo(1, 5);
  });

  test("a grid that needs a datum grid file still gives its convergence, from its own projection", () => {
    const site = valueFrom(sitePosition("EPSG:27700", 651409.903, 313177.27));
    expect(Math.abs(site.latitudeRad - radiansFromDms("52 39 27.2531 N")) * 6.4e6).toBeLessThan(0.001);
    expect(site.datumAccuracyM).toBe(1000);
    expect(degreesFromRadians(site.convergenceUncertaintyRad)).toBeLessThan(0.02);
    expect(site.convergenceUncertaintyRad).toBeGreaterThan(0);
  });
});

describe("[C6] the bearing chain of the line Buninyong - Flinders Peak", () => {
  const { forward, back } = published.line;
  test.each([
    ["forward", forward, 228854.052, 5828259.038],
    ["back", back, 273741.297, 5796489.777],
  ] as const)("%s", (_name, line, east, north) => {
    const { convergenceRad } = valueFrom(sitePosition("EPSG:28355", east, north));
    const bearing = radiansFromDms(line.azimuth) - convergenceRad;
    expect(Math.abs(bearing - radiansFromDms(line.grid_bearing))).toBeLessThan(0.015 * SECOND);
    const plane = bearing + radiansFromDms(line.arc_to_chord);
    expect(Math.abs(plane - radiansFromDms(line.plane_bearing))).toBeLessThan(0.025 * SECOND);
  });

  test("the plane bearing and distance follow from the coordinates alone", () => {
    const east = 273741.297 - 228854.052;
    const north = 5796489.777 - 5828259.038;
    const bearing = (Math.atan2(east, north) + 2 * Math.PI) % (2 * Math.PI);
    expect(Math.abs(bearing - radiansFromDms(forward.plane_bearing))).toBeLessThan(0.01 * SECOND);
    expect(Math.abs(Math.hypot(east, north) - published.line.planeDistanceM)).toBeLessThan(0.001);
  });
});

describe("what is refused, and what is only said", () => {
  test.each([
    ["local", "geodesy.crs-local"],
    ["British grid", "geodesy.crs-not-epsg"],
    ["", "geodesy.crs-not-epsg"],
    ["EPSG:", "geodesy.crs-not-epsg"],
    ["EPSG:4326", "geodesy.crs-geographic"],
    ["EPSG:3857", "geodesy.crs-refused"],
    ["EPSG:3035", "geodesy.crs-refused"],
    ["EPSG:3139", "geodesy.crs-refused"],
    ["EPSG:1", "geodesy.crs-unknown"],
    ["EPSG:999999", "geodesy.crs-unknown"],
  ])("%s", (crs, code) => {
    expect(codesOf(at(crs, 51.5, 0))).toEqual([code]);
  });

  test("the word EPSG may be written small", () => {
    expect(at(" epsg:32631 ", 51.5, 3).ok).toBe(true);
  });

  test("a compound system counts as its map grid", () => {
    expect(valueFrom(at("EPSG:7405", 51.5, 0)).convergenceRad).toBe(
      valueFrom(at("EPSG:27700", 51.5, 0)).convergenceRad,
    );
  });

  test("the place of the finding is passed through", () => {
    const result = gridConvergence("local", 0.9, 0, { file: "job.json", field: "place.crs" });
    expect(result.ok ? undefined : result.error[0]?.place).toEqual({ file: "job.json", field: "place.crs" });
  });

  test("missing or impossible coordinates", () => {
    expect(codesOf(at("EPSG:32631", Number.NaN, 3))).toEqual(["geodesy.place-out-of-reach"]);
    expect(codesOf(at("EPSG:32631", 90, 3))).toEqual(["geodesy.place-out-of-reach"]);
    expect(codesOf(sitePosition("EPSG:32631", Number.NaN, 5e6))).toEqual(["geodesy.place-out-of-reach"]);
    expect(codesOf(sitePosition("EPSG:32631", 1e12, 5e6))).toEqual(["geodesy.place-out-of-reach"]);
  });

  const outside = (crs: string, latitudeDeg: number, longitudeDeg: number): boolean =>
    valueFrom(at(crs, latitudeDeg, longitudeDeg)).warnings.some((one) => one.code === "geodesy.outside-area");

  test("a site outside the area of the grid", () => {
    const site = valueFrom(at("EPSG:32631", 51.5, 12));
    expect(site.warnings.map((one) => [one.code, one.severity])).toEqual([
      ["geodesy.outside-area", "warning"],
    ]);
  });

  test("an area that crosses the 180th meridian holds places on both sides of it", () => {
    for (const longitude of [179.5, -179.5, 177.5]) expect(outside("EPSG:3832", -10, longitude)).toBe(false);
    expect(outside("EPSG:3832", -10, 0)).toBe(true);
  });

  test("a grid whose metres are far from metres on the ground", () => {
    const site = valueFrom(at("EPSG:3395", 51.5, 0));
    expect(site.warnings.map((one) => one.code)).toEqual(["geodesy.scale-far-from-one"]);
  });
});

describe("satellite positions", () => {
  const site = {
    latitudeRad: 52.658007833 * RADIANS_PER_DEGREE,
    longitudeRad: 1.716073973 * RADIANS_PER_DEGREE,
  };

  test("are refused where the datum needs a grid file, with its name", () => {
    const result = gridFromWgs84("EPSG:27700", site, 5);
    expect(codesOf(result)).toEqual(["geodesy.needs-grid-file"]);
    expect(result.ok ? "" : result.error[0]?.values["file"]).toBe("OSTN15_NTv2_OSGBtoETRS.gsb");
  });

  test("are refused where the accuracy asked for cannot be kept", () => {
    expect(codesOf(gridFromWgs84("EPSG:28992", site, 5))).toEqual(["geodesy.datum-accuracy"]);
    expect(codesOf(gridFromWgs84("EPSG:32631", site, 0.02))).toEqual(["geodesy.datum-accuracy"]);
    expect(codesOf(gridFromWgs84("EPSG:32631", site, Number.NaN))).toEqual(["geodesy.datum-accuracy"]);
  });

  test("the stated kilometre holds for the British grid: the official shift there is some 110 m", () => {
    const own = valueFrom(gridFromWgs84("EPSG:27700", site, 1000));
    // Official grid shift of the Ordnance Survey at its test point: 651409.804, 313177.450.
    const apart = Math.hypot(own.east - 651409.804, own.north - 313177.45);
    expect(apart).toBeGreaterThan(50);
    expect(apart).toBeLessThan(1000);
  });

  test("are taken for a global datum", () => {
    expect(gridFromWgs84("EPSG:32631", site, 5).ok).toBe(true);
    expect(codesOf(gridFromWgs84("EPSG:32631", { latitudeRad: Number.NaN, longitudeRad: 0 }, 5))).toEqual([
      "geodesy.place-out-of-reach",
    ]);
  });
});
