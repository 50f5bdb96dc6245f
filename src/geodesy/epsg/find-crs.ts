import { fail, type Issue, ok, type Place, type Result } from "#core";
import { geodesyIssue } from "../geodesy-issue.ts";
import type { CrsDefinition, DatumShift } from "./crs-definition.ts";
import table from "./epsg-table.json" with { type: "json" };

function shiftFrom(text: string): DatumShift {
  if (text === "") return { kind: "global" };
  return text === "?" ? { kind: "own" } : { kind: "grid-file", file: text };
}

/** A line of the table: code | index of the definition | index of the area | datum shift | name. */
function definitionFrom(line: string): CrsDefinition {
  const [code = "", definition = "", area = "", shift = "", name = ""] = line.split("|");
  const [southDeg = Number.NaN, westDeg = Number.NaN, northDeg = Number.NaN, eastDeg = Number.NaN] = (
    table.areas[Number(area)] ?? ""
  )
    .split(" ")
    .map(Number);
  return {
    crs: `EPSG:${code}`,
    name,
    projection: table.definitions[Number(definition)] ?? "",
    area: { southDeg, westDeg, northDeg, eastDeg },
    datumShift: shiftFrom(shift),
  };
}

/** The line that starts with the code; the lines are sorted by code. */
function lineOf(lines: readonly string[], code: number): string | undefined {
  let low = 0;
  let high = lines.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const line = lines[middle] ?? "";
    const found = Number.parseInt(line, 10);
    if (found === code) return line;
    if (found < code) low = middle + 1;
    else high = middle - 1;
  }
  return undefined;
}

/**
 * Looks a projected CRS up in the EPSG table that comes with the program.
 *
 * @param crs "EPSG:n" (the word EPSG in any case).
 * Errors: geodesy.crs-local, geodesy.crs-not-epsg, geodesy.crs-geographic, geodesy.crs-refused, geodesy.crs-unknown.
 * Frame: none.
 * Source: EPSG Geodetic Parameter Dataset (IOGP), through the npm package epsg-index 2.0.0.
 */
export function findCrs(crs: string, place: Place = {}): Result<CrsDefinition, readonly Issue[]> {
  const refuse = (code: string, values: Issue["values"] = {}): Result<CrsDefinition, readonly Issue[]> =>
    fail([geodesyIssue(code, { crs, ...values }, place)]);
  if (crs.trim().toLowerCase() === "local") return refuse("geodesy.crs-local");
  const digits = /^\s*EPSG:(\d{1,6})\s*$/i.exec(crs)?.[1];
  if (digits === undefined) return refuse("geodesy.crs-not-epsg");
  const code = Number(digits);
  const line = lineOf(table.lines, code);
  if (line !== undefined) return ok(definitionFrom(line));
  if (table.geographic.includes(code)) return refuse("geodesy.crs-geographic");
  const refused = lineOf(table.refused, code);
  if (refused !== undefined) return refuse("geodesy.crs-refused", { reason: refused.split("|")[1] ?? "" });
  return refuse("geodesy.crs-unknown");
}

/** Every CRS code of the table, as "EPSG:n", in the order of the codes. */
export function listCrs(): readonly string[] {
  return table.lines.map((line) => `EPSG:${Number.parseInt(line, 10)}`);
}
