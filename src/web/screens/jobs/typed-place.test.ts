import { expect, test } from "vitest";
import { crsOf, isPaired, NO_PLACE, placeFields } from "./typed-place.ts";

test("the number of a map grid may stand with or without its word", () => {
  for (const epsg of ["32631", "EPSG:32631", " epsg: 32631 "])
    expect(crsOf({ ...NO_PLACE, grid: "map", epsg })).toBe("EPSG:32631");
  expect(crsOf({ ...NO_PLACE, grid: "map" })).toBeUndefined();
});

test("latitude and longitude go together", () => {
  expect(isPaired(NO_PLACE)).toBe(true);
  expect(isPaired({ ...NO_PLACE, latitude: "51,5" })).toBe(false);
  expect(isPaired({ ...NO_PLACE, latitude: "51,5", longitude: "0.02" })).toBe(true);
  expect(isPaired({ ...NO_PLACE, latitude: "95", longitude: "0.02" })).toBe(false);
});

test("only what was typed is written down", () => {
  expect(placeFields(NO_PLACE)).toEqual({ crs: "local" });
  expect(placeFields({ ...NO_PLACE, latitude: "51,5", longitude: "0.02", datum: " site datum " })).toEqual({
    crs: "local",
    latitude_deg: 51.5,
    longitude_deg: 0.02,
    level_datum: "site datum",
  });
});
