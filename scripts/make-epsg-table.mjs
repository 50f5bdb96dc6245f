// Writes src/geodesy/epsg/epsg-table.json from the development package epsg-index (EPSG Geodetic Parameter Dataset).
// Run: node scripts/make-epsg-table.mjs
//
// Kept: projected CRSs (and compound ones, for their horizontal part) that are survey grids proj4 can really do:
// ellipsoidal, finite, coming back to the same place, and turning all directions of a place alike.
// The datum shift is left out on purpose: convergence and scale do not need it (docs/method/north-and-grids.md).

import { writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import proj4 from "proj4";

const require = createRequire(import.meta.url);
const entries = Object.values(require("epsg-index/all.json"));

const UNDERSTOOD = new Set(
  "proj lat_0 lon_0 lat_1 lat_2 lat_ts lonc alpha gamma k k_0 x_0 y_0 zone south a b rf ellps pm no_uoff".split(
    " ",
  ),
);
/** said elsewhere in the table or of no effect on the map projection */
const LEFT_OUT = new Set("datum towgs84 nadgrids units to_meter vunits axis no_defs type wktext".split(" "));
const ELLIPSOID_OF_DATUM = { WGS84: "WGS84", NAD83: "GRS80", NAD27: "clrk66" };
/** datums that agree with WGS 84 to a few metres have one of these ellipsoids and a zero shift */
const GLOBAL_ELLIPSOIDS = new Set(["WGS84", "GRS80"]);
const LARGEST_DISTORTION_RAD = (0.05 * Math.PI) / 180;
/** codes above are not EPSG's own, although the package holds some under that name */
const LAST_EPSG_CODE = 32767;

function parametersOf(text) {
  const parameters = new Map();
  for (const [, key, quoted, bare] of text.matchAll(/\+(\w+)(?:=(?:"([^"]*)"|(\S+)))?/g))
    parameters.set(key, quoted ?? bare ?? "");
  return parameters;
}

function definitionOf(parameters) {
  const datum = parameters.get("datum");
  if (datum !== undefined) {
    if (!(datum in ELLIPSOID_OF_DATUM)) return { refusal: `datum ${datum}` };
    parameters.set("ellps", ELLIPSOID_OF_DATUM[datum]);
  }
  const kept = [];
  for (const [key, value] of parameters) {
    if (LEFT_OUT.has(key)) continue;
    if (!UNDERSTOOD.has(key)) return { refusal: `projection ${parameters.get("proj")} with ${key}` };
    kept.push(value === "" ? `+${key}` : `+${key}=${value}`);
  }
  return { definition: kept.join(" ") };
}

function shiftOf(parameters) {
  const grid = parameters.get("nadgrids");
  if (grid !== undefined && grid !== "@null") return grid;
  const shift = (parameters.get("towgs84") ?? "0").split(",").map(Number);
  const zero = shift.every((value) => value === 0);
  return zero && GLOBAL_ELLIPSOIDS.has(parameters.get("ellps")) ? "" : "?";
}

/** a few places of the area, degrees; the middle first */
function placesIn([north, west, south, east]) {
  const width = (east - west + 360) % 360 || 360;
  return [0.5, 0.25, 0.75].flatMap((a) =>
    [0.5, 0.25, 0.75].map((b) => [((west + a * width + 540) % 360) - 180, south + b * (north - south)]),
  );
}

function difficultyOf(definition, bbox) {
  let converter;
  try {
    converter = proj4("+proj=longlat +ellps=WGS84", definition);
  } catch {
    return `projection ${definition.match(/\+proj=(\w+)/)[1]}`;
  }
  const { a, es } = new proj4.Proj(definition);
  if (!(es > 0)) return "sphere";
  for (const place of placesIn(bbox)) {
    const [x, y] = converter.forward(place);
    const [lon, lat] = converter.inverse([x, y]);
    const radians = Math.PI / 180;
    const apart =
      Math.hypot((((lon - place[0] + 540) % 360) - 180) * Math.cos(lat * radians), lat - place[1]) *
      radians *
      a;
    if (!(apart < 0.001)) return "no way back";
    const w = 1 - es * Math.sin(lat * radians) ** 2;
    const dLat = 10 / ((a * (1 - es)) / w ** 1.5) / radians;
    const dLon = 10 / ((a / Math.sqrt(w)) * Math.cos(lat * radians)) / radians;
    const [x1, y1] = converter.forward([place[0], lat + dLat]);
    const [x2, y2] = converter.forward([place[0], lat - dLat]);
    const [x3, y3] = converter.forward([place[0] + dLon, lat]);
    const [x4, y4] = converter.forward([place[0] - dLon, lat]);
    const [ee, ne, en, nn] = [x3 - x4, y3 - y4, x1 - x2, y1 - y2];
    const distortion = Math.asin(Math.hypot(ee - nn, en + ne) / Math.hypot(ee + nn, ne - en));
    if (!(distortion < LARGEST_DISTORTION_RAD)) return "not a survey grid";
  }
  return undefined;
}

const definitions = [];
const areas = [];
const lines = [];
const refused = [];
const geographic = [];
const indexIn = (list, text) => (list.includes(text) ? list.indexOf(text) : list.push(text) - 1);

for (const entry of entries.sort((a, b) => Number(a.code) - Number(b.code))) {
  const code = Number(entry.code);
  const text = entry.proj4 ?? "";
  if (code > LAST_EPSG_CODE) continue;
  if (/GEOGCRS|GCENCRS|GEOG3DCRS/.test(entry.kind) || /proj=longlat/.test(text)) {
    geographic.push(code);
    continue;
  }
  if (!/PROJCRS|COMPOUNDCRS/.test(entry.kind) || /\|/.test(entry.name)) continue;
  const parameters = parametersOf(text);
  const refuse = (why) => refused.push(`${code}|${why}`);
  if (!parameters.has("proj")) {
    refuse("no definition");
    continue;
  }
  if (/Lambert_Conformal_Conic_2SP_Belgium/.test(entry.wkt ?? "")) {
    refuse("the definition leaves out a turn of 29 seconds");
    continue;
  }
  const { definition, refusal } = definitionOf(parameters);
  const difficulty = refusal ?? difficultyOf(definition, entry.bbox ?? [0, 0, 0, 0]);
  if (difficulty !== undefined || entry.bbox == null) {
    refuse(difficulty ?? "no area");
    continue;
  }
  const [north, west, south, east] = entry.bbox;
  const area = indexIn(areas, [south, west, north, east].join(" "));
  lines.push([code, indexIn(definitions, definition), area, shiftOf(parameters), entry.name].join("|"));
}

const table = {
  source:
    "EPSG Geodetic Parameter Dataset (IOGP) through the npm package epsg-index 2.0.0; scripts/make-epsg-table.mjs",
  definitions,
  areas,
  lines,
  refused,
  geographic,
};
const text = `${JSON.stringify(table, undefined, 0).replaceAll('","', '",\n"')}\n`;
writeFileSync(new URL("../src/geodesy/epsg/epsg-table.json", import.meta.url), text);
const reasons = {};
for (const line of refused) {
  const why = line.split("|")[1];
  reasons[why] = [...(reasons[why] ?? []), line.split("|")[0]];
}
console.log(
  `${lines.length} kept, ${refused.length} refused, ${definitions.length} definitions, ${areas.length} areas, ${text.length} bytes`,
);
for (const [why, codes] of Object.entries(reasons))
  console.log(`  ${why}: ${codes.length} (${codes.slice(0, 8).join(" ")})`);
