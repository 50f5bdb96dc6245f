import type { ElementResult } from "#core";
import { csv } from "./csv.ts";

const HEADINGS = [
  "depth_m",
  "level_m",
  "easting_m",
  "northing_m",
  "offset_east_m",
  "offset_north_m",
  "offset_m",
  "along_m",
  "across_m",
  "u95_m",
  "interpolated",
];

/** A tenth of a millimetre, and never "-0.0000". */
const metres = (value: number): string | undefined =>
  Number.isFinite(value) ? value.toFixed(4).replace(/^-(0\.0+)$/, "$1") : undefined;

/** The as-built axis of an element for a spreadsheet: levels positive up, offsets square to the design axis. */
export function axisCsv(element: ElementResult): string {
  return csv(
    HEADINGS,
    element.axis.map((row, i) => [
      metres(row.depthM),
      metres(-row.downM),
      metres(row.eastM),
      metres(row.northM),
      metres(row.offsetEastM),
      metres(row.offsetNorthM),
      metres(row.offsetM),
      metres(row.alongM),
      metres(row.acrossM),
      metres(element.uncertainty?.ellipses[i]?.u95M ?? Number.NaN),
      row.interpolated ? "yes" : "no",
    ]),
  );
}
