import type { JsonObject } from "#records";
import { readTypedNumber } from "../../components/typed-number.ts";

/** The place of a new job as it was typed. */
export interface TypedPlace {
  readonly grid: "own" | "map";
  readonly epsg: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly datum: string;
}

export const NO_PLACE: TypedPlace = { grid: "own", epsg: "", latitude: "", longitude: "", datum: "" };

/** "EPSG:n" of what was typed, with or without the word; undefined while nothing is typed. */
export function crsOf({ grid, epsg }: TypedPlace): string | undefined {
  if (grid === "own") return "local";
  const typed = epsg.trim();
  if (typed === "") return undefined;
  return /^\d+$/.test(typed) ? `EPSG:${typed}` : typed.toUpperCase().replaceAll(/\s/g, "");
}

/** Degrees within their bounds; undefined: nothing typed, or nothing that can be used. */
export function degreesOf(text: string, most: number): number | undefined {
  const read = readTypedNumber(text, "°");
  return read.kind === "number" && Math.abs(read.value) <= most ? read.value : undefined;
}

/** Whether both of latitude and longitude can be used, or both are empty. */
export function isPaired({ latitude, longitude }: TypedPlace): boolean {
  if (latitude.trim() === "" && longitude.trim() === "") return true;
  return degreesOf(latitude, 90) !== undefined && degreesOf(longitude, 180) !== undefined;
}

/** Fields of the job's first entry. */
export function placeFields(place: TypedPlace): JsonObject {
  const [latitude, longitude] = [degreesOf(place.latitude, 90), degreesOf(place.longitude, 180)];
  const datum = place.datum.trim();
  return {
    crs: crsOf(place) ?? "local",
    ...(latitude === undefined ? {} : { latitude_deg: latitude }),
    ...(longitude === undefined ? {} : { longitude_deg: longitude }),
    ...(datum === "" ? {} : { level_datum: datum }),
  };
}
