import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { radiansFromDegrees } from "#core";
import { Finder } from "../finding/finder.ts";
import { readReadings } from "./read-readings.ts";

const FILE = new URL("../../../test/published/bsee-surveys/stations.csv", import.meta.url);

test("[A3] BSEE surveys: inclinations in minutes and quadrant bearings are read from the cells of a readings file", () => {
  const lines = readFileSync(FILE, "utf8").trim().split("\n");
  const rows = lines.filter((line) => /^\d/.test(line)).map((line) => line.split(","));
  expect(rows).toHaveLength(100);
  const csv = rows.map(([, degrees, minutes, depth, ns, bearing, bearingMinutes, ew]) =>
    [depth, `${degrees} ${minutes}`, `${ns} ${bearing} ${bearingMinutes} ${ew}`].join(","),
  );
  const found = new Finder("bsee.csv");
  const text = `depth_m,inclination_deg,azimuth_deg\n${csv.join("\n")}\n`;
  const read = readReadings(new TextEncoder().encode(text), "inclination-azimuth", found);
  expect(found.blocked).toBe(false);
  for (const [index, [, degrees, minutes, , ns, bearing, bearingMinutes, ew]] of rows.entries()) {
    const inclination = Number(degrees) + Number(minutes) / 60;
    const sharp = Number(bearing) + Number(bearingMinutes) / 60;
    const fromNorth = ns === "N" ? sharp : 180 - sharp;
    const azimuth = ew === "E" ? fromNorth : 360 - fromNorth;
    expect(read?.readings.inclinationRad[index]).toBeCloseTo(radiansFromDegrees(inclination), 12);
    expect(Math.cos(read!.readings.azimuthRad[index]! - radiansFromDegrees(azimuth))).toBeCloseTo(1, 12);
  }
});
