import { degreesFromRadians, type Language } from "#core";
import type { ElementRow } from "../../worker/desk.ts";
import type { TypedRow } from "../../worker/desk-set-up.ts";

/** The cells of an element as a form begins with them: every digit, with the decimal mark of the language. */
export function cellsOfRow(row: ElementRow, language: Language): TypedRow {
  const mark = language === "de" ? "," : ".";
  const number = (value: number | undefined, decimals = 6) =>
    value === undefined || !Number.isFinite(value)
      ? ""
      : String(Number(value.toFixed(decimals))).replace(".", mark);
  const angle = (radians: number | undefined) =>
    number(radians === undefined ? undefined : degreesFromRadians(radians));
  const { section } = row;
  const sides = section?.shape === "rectangle" ? section : undefined;
  return {
    kind: row.kind,
    easting_m: number(row.eastM),
    northing_m: number(row.northM),
    head_level_m: number(row.headLevelM),
    cutoff_level_m: number(row.cutoffLevelM),
    toe_level_m: number(row.toeLevelM),
    diameter_m: number(section?.shape === "round" ? section.diameterM : undefined),
    length_m: number(sides?.lengthM),
    width_m: number(sides?.widthM),
    orientation_deg: angle(sides?.orientationRad),
    rake_deg: row.rakeRad === 0 ? "" : angle(row.rakeRad),
    rake_bearing_deg: angle(row.rakeBearingRad),
    group: row.group ?? "",
    sequence: row.sequence === undefined ? "" : String(row.sequence),
    role: row.role ?? "",
  };
}
