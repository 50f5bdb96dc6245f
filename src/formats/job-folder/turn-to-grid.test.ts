import { describe, expect, test } from "vitest";
import { radiansFromDegrees } from "#core";
import { gridConvergence, projectionFor } from "#geodesy";
import { valueFrom } from "../../../test/support/results.ts";
import { Finder } from "../finding/finder.ts";
import { SiteNorth } from "./turn-to-grid.ts";

const latitude = radiansFromDegrees(51.5);
const longitude = radiansFromDegrees(0.02);
const map = "EPSG:32631";
const origin = valueFrom(projectionFor(map)).forward({ latitudeRad: latitude, longitudeRad: longitude });

/** Map coordinates of a site point: site axes turned by so many degrees anticlockwise in the map, origin at the place. */
function pointOnMap(name: string, x: number, y: number, turnDeg: number) {
  const turn = radiansFromDegrees(turnDeg);
  return {
    name,
    local_east_m: 1000 + x,
    local_north_m: 5000 + y,
    map_east_m: origin.east + x * Math.cos(turn) - y * Math.sin(turn),
    map_north_m: origin.north + x * Math.sin(turn) + y * Math.cos(turn),
  };
}

const corners = (turnDeg: number) =>
  [
    ["A", -40, -40],
    ["B", 40, -40],
    ["C", 40, 40],
    ["D", -15, 70],
  ].map(([name, x, y]) => pointOnMap(String(name), Number(x), Number(y), turnDeg));

describe("a site grid laid on a map by common points", () => {
  test.each([0, 10, -33, 170])(
    "[C6] axes turned %d degrees: true bearings come out on the site grid",
    (turnDeg) => {
      const north = new SiteNorth({ crs: "local", common_points: { map, points: corners(turnDeg) } }, []);
      const found = new Finder("job.json");
      const turn = north.turn("true", [], undefined, "runs[0].opening", found);
      // a bearing on the map is true less its convergence; seen from axes turned anticlockwise it is larger by the turn
      const onMap = valueFrom(gridConvergence(map, latitude, longitude)).convergenceRad;
      expect(-turn!.convergenceRad).toBeCloseTo(-onMap + radiansFromDegrees(turnDeg), 5);
      expect(north.latitudeAndLongitude()?.latitudeRad).toBeCloseTo(latitude, 5);
      expect(north.latitudeAndLongitude()?.longitudeRad).toBeCloseTo(longitude, 5);
    },
  );

  test("a reversed axis is told and turns nothing", () => {
    const points = corners(10).map((point) => ({ ...point, local_north_m: 10_000 - point.local_north_m }));
    const north = new SiteNorth({ crs: "local", common_points: { map, points } }, []);
    const found = new Finder("job.json");
    north.checkGrid(found);
    expect(found.issues.map(({ code }) => code)).toContain("geodesy.local-grid-reversed");
    expect(north.turn("true", [], undefined, "runs[0].opening", found)).toBeUndefined();
  });
});
