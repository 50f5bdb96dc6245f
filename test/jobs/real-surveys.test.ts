import { existsSync, readFileSync } from "node:fs";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { computePath, type HolePath, ned, type PathMethodId } from "#core";
import { gridConvergence } from "#geodesy";
import { valueFrom } from "../support/results.ts";
import { tangentsOfAngles } from "../support/tangents.ts";

type Row = Readonly<Record<string, string>>;
const degree = Math.PI / 180;

const readTable = (path: URL): Row[] =>
  Papa.parse<Row>(readFileSync(path, "utf8"), { header: true, comments: "#", skipEmptyLines: true }).data;

/** Angles in degrees by depth, from the columns of a file, with a plumb start at depth 0 where the file has none. */
function stationsOf(rows: readonly Row[], columns: readonly [string, string, string], plumbStart: boolean) {
  const stations = rows.map((row) => columns.map((column) => Number.parseFloat(row[column]!)));
  return plumbStart ? [[0, 0, 0], ...stations] : stations;
}

function pathOf(stations: readonly number[][], start: number, method: PathMethodId): HolePath {
  return computePath(tangentsOfAngles(stations), ned(0, 0, start), method);
}

/** Largest difference between a column of the file and the path, over the rows of the file. */
function worst(rows: readonly Row[], column: string, computed: Float64Array): number {
  const skipped = computed.length - rows.length;
  return rows.reduce((most, row, i) => {
    const difference = Math.abs(Number.parseFloat(row[column]!) - computed[i + skipped]!);
    return Math.max(difference, most);
  }, 0);
}

const bsee = readTable(new URL("../published/bsee-surveys/stations.csv", import.meta.url));

/** Quadrant bearing such as S 83 00 W, as degrees from north. */
function quadrantDeg(row: Row): number {
  const angle = Number(row["DIR_DEG_VAL"]) + Number(row["DIR_MINS_VAL"]) / 60;
  const fromNorth = row["WELL_N_S_CODE"] === "N" ? angle : 180 - angle;
  return row["WELL_E_W_CODE"] === "E" ? fromNorth : 360 - fromNorth;
}

/** Feet of the path against feet from the geographic differences, after turning bearings from grid to true. */
function bseeMisfit(well: string, method: PathMethodId): { north: number; east: number; down: number } {
  const rows = bsee.filter((row) => row["API_WELL_NUMBER"] === well);
  const stations = rows.map((row) => [
    Number(row["SURVEY_POINT_MD"]),
    Number(row["INCL_ANG_DEG_VAL"]) + Number(row["INCL_ANG_MIN_VAL"]) / 60,
    quadrantDeg(row),
  ]);
  const latitude = Number(rows[0]!["SURF_LATITUDE"]) * degree;
  const longitude = Number(rows[0]!["SURF_LONGITUDE"]) * degree;
  // Louisiana South, the state-plane zone of the wells
  const convergence = valueFrom(gridConvergence("EPSG:26982", latitude, longitude)).convergenceRad;
  const path = pathOf(stations, Number(rows[0]!["SURVEY_POINT_TVD"]), method);
  const [c, s] = [Math.cos(convergence), Math.sin(convergence)];
  // feet for a degree on the GRS 80 ellipsoid, 0.3048 m a foot
  const w = 1 - 0.00669438 * Math.sin(latitude) ** 2;
  const feetPerDegreeNorth = ((6378137 * (1 - 0.00669438)) / w ** 1.5 / 0.3048) * degree;
  const feetPerDegreeEast = ((6378137 / Math.sqrt(w)) * Math.cos(latitude) * degree) / 0.3048;
  const misfit = { north: 0, east: 0, down: 0 };
  rows.forEach((row, i) => {
    const north = path.northM[i]! * c - path.eastM[i]! * s;
    const east = path.northM[i]! * s + path.eastM[i]! * c;
    misfit.north = Math.max(misfit.north, Math.abs(north - Number(row["DELTA_Y"]) * feetPerDegreeNorth));
    misfit.east = Math.max(misfit.east, Math.abs(east - Number(row["DELTA_X"]) * feetPerDegreeEast));
    misfit.down = Math.max(misfit.down, Math.abs(path.downM[i]! - Number(row["SURVEY_POINT_TVD"])));
  });
  return misfit;
}

describe("real surveys with coordinates computed by others", () => {
  test.each([
    ["177000002801", 77],
    ["177000003100", 23],
  ])(
    "[C6] [D1] BSEE %s: quadrant bearings, minutes, grid to true, coordinates within their printing",
    (well, count) => {
      expect(bsee.filter((row) => row["API_WELL_NUMBER"] === well)).toHaveLength(count);
      const misfit = bseeMisfit(well, "minimum-curvature");
      expect(misfit.down).toBeLessThan(0.5);
      expect(misfit.north).toBeLessThan(0.3);
      expect(misfit.east).toBeLessThan(0.3);
    },
  );

  test("[D2] BSEE 177000002801 tells the methods apart: average angle and radius of curvature do not fit", () => {
    for (const method of ["average-angle", "radius-of-curvature"] as const) {
      const misfit = bseeMisfit("177000002801", method);
      expect(Math.max(misfit.north, misfit.east), method).toBeGreaterThan(0.6);
    }
  });

  const shared = (name: string) => new URL(`../../../shared/reference/${name}`, import.meta.url);
  const kansas = shared("kansas-schrock-3510-12-1swd.csv");
  const agile = shared("agile-welly-deviation.csv");

  // These two files may not be carried with the program; they are read where they are at hand.
  test.runIf(existsSync(kansas))(
    "[D1] a near-vertical survey of 5580 ft: minimum curvature to 0.03 ft, 0.006 ft in depth",
    () => {
      const rows = readTable(kansas);
      const path = pathOf(stationsOf(rows, ["MD_ft", "Inc_deg", "Azi_deg"], true), 0, "minimum-curvature");
      expect(rows).toHaveLength(64);
      expect(worst(rows, "N_ft", path.northM)).toBeLessThan(0.03);
      expect(worst(rows, "E_ft", path.eastM)).toBeLessThan(0.03);
      expect(worst(rows, "TVD_ft", path.downM)).toBeLessThan(0.006);
    },
  );

  test.runIf(existsSync(kansas))(
    "[A3] the same survey: a plumb start takes the next azimuth, or average angle is 0.68 ft off",
    () => {
      const rows = readTable(kansas);
      const stations = stationsOf(rows, ["MD_ft", "Inc_deg", "Azi_deg"], true);
      const taken = pathOf(stations, 0, "average-angle");
      expect(worst(rows, "N_ft", taken.northM)).toBeLessThan(0.35);
      expect(worst(rows, "E_ft", taken.eastM)).toBeLessThan(0.67);
    },
  );

  test.runIf(existsSync(agile))(
    "[D1] a deviated survey of 2267 m: 0.05 m, and depth prefers minimum curvature",
    () => {
      const rows = readTable(agile);
      const stations = stationsOf(rows, ["MD_m", "Inc_deg", "Azi_deg"], false);
      const path = pathOf(stations, 0, "minimum-curvature");
      expect(rows).toHaveLength(80);
      for (const [column, axis] of [
        ["N_m", path.northM],
        ["E_m", path.eastM],
        ["TVD_m", path.downM],
      ] as const)
        expect(worst(rows, column, axis)).toBeLessThan(0.05);
      expect(worst(rows, "TVD_m", pathOf(stations, 0, "balanced-tangential").downM)).toBeGreaterThan(0.1);
    },
  );
});
