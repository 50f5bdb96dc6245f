import { type HeadingReference, type Readings, radiansFromDegrees, type SurveyRun } from "#core";
import type { Finder } from "../finding/finder.ts";
import { checkSpiral } from "./check-run.ts";
import { measuresTurn } from "./readings-columns.ts";
import type { ReferenceInput, RunInput } from "./schema/run-schema.ts";
import { gridAngle, ownUncertainty, type SiteNorth } from "./turn-to-grid.ts";

export type References = Pick<
  SurveyRun,
  | "opening"
  | "closing"
  | "ties"
  | "azimuthToGridRad"
  | "azimuthUncertaintyRad"
  | "azimuthDeclinationUncertaintyRad"
>;

type AzimuthPart = "azimuthToGridRad" | "azimuthUncertaintyRad" | "azimuthDeclinationUncertaintyRad";

/** A row that should stand at the top may lie so far below the highest one. Common practice, no source. */
const AT_TOP_M = 1;

/**
 * What gives a run its heading, turned to grid north: references of a gyro run, the north of its azimuths, or the groove.
 *
 * Blocking: formats.reference-missing, formats.azimuth-north-missing, formats.groove-missing, formats.ties-unmatched, and
 * what cannot be turned to grid. Error: formats.opening-missing. Warnings: formats.reference-unused, formats.reference-not-at-top.
 */
export function readReferences(
  input: RunInput,
  field: string,
  readings: Readings,
  date: string | undefined,
  north: SiteNorth,
  found: Finder,
): References {
  const none = {
    opening: undefined,
    closing: undefined,
    ties: [],
    azimuthToGridRad: 0,
    azimuthUncertaintyRad: 0,
    azimuthDeclinationUncertaintyRad: 0,
  };
  tellUnused(input, field, found);
  if (input.measures === "inclination-azimuth")
    return { ...none, ...azimuthsOf(input, field, date, north, found) };
  if (input.measures === "keyed-tilt") {
    if (input.groove_bearing_deg === undefined) {
      const values = { found: "nothing", expected: "the grid bearing of +x at the top" };
      found.block("formats.groove-missing", { field: `${field}.groove_bearing_deg` }, values);
    }
    checkSpiral(input.spiral ?? [], field, found);
    return none;
  }
  checkPresence(input, field, readings, found);
  const turn = (reference: ReferenceInput | undefined, name: string): HeadingReference | undefined =>
    reference === undefined
      ? undefined
      : turnReference(reference, input, `${field}.${name}`, date, north, found);
  return {
    ...none,
    opening: turn(input.opening, "opening"),
    closing: turn(input.closing, "closing"),
    ties: (input.ties ?? []).flatMap((tie, index) => turn(tie, `ties[${index}]`) ?? []),
  };
}

function azimuthsOf(
  input: RunInput,
  field: string,
  date: string | undefined,
  north: SiteNorth,
  found: Finder,
): Pick<References, AzimuthPart> | undefined {
  const at = `${field}.azimuth_north`;
  if (input.azimuth_north === undefined) {
    found.block(
      "formats.azimuth-north-missing",
      { field: at },
      { found: "nothing", expected: "magnetic, true or grid" },
    );
    return undefined;
  }
  const turn = north.turn(input.azimuth_north, [input], date, at, found);
  if (turn === undefined) return undefined;
  const given = input.azimuth_standard_uncertainty_deg;
  return {
    azimuthToGridRad: turn.declinationRad - turn.convergenceRad,
    // a given uncertainty is that of the azimuths as they stand, the magnetic model's part included
    azimuthUncertaintyRad: ownUncertainty(input.azimuth_north, given),
    azimuthDeclinationUncertaintyRad: given === undefined ? turn.declinationUncertaintyRad : 0,
  };
}

function turnReference(
  reference: ReferenceInput,
  run: RunInput,
  field: string,
  date: string | undefined,
  north: SiteNorth,
  found: Finder,
): HeadingReference | undefined {
  const turn = north.turn(reference.north, [reference, run], date, field, found);
  if (turn === undefined) return undefined;
  const givenHeadingRad = radiansFromDegrees(reference.heading_deg);
  return {
    headingRad: gridAngle(givenHeadingRad, turn),
    standardUncertaintyRad: ownUncertainty(reference.north, reference.standard_uncertainty_deg),
    givenNorth: reference.north,
    givenHeadingRad,
    ...turn,
  };
}

function checkPresence(input: RunInput, field: string, readings: Readings, found: Finder): void {
  const ties = input.ties ?? [];
  const rows = readings.leg.filter((leg) => leg === "tie").length;
  if (rows !== ties.length) {
    const values = {
      found: `${ties.length} in job.json, ${rows} in the readings`,
      expected: "as many ties as rows with leg tie",
    };
    found.block("formats.ties-unmatched", { field: `${field}.ties` }, values);
  }
  if (input.opening === undefined) {
    const lost = input.closing === undefined && ties.length === 0;
    const values = { found: "nothing", expected: "the heading of +x at the top before the run" };
    if (lost) found.block("formats.reference-missing", { field: `${field}.opening` }, values);
    else found.error("formats.opening-missing", { field: `${field}.opening` }, values);
  }
  tellNotAtTop(readings, input.opening !== undefined, "opening", field, found);
  tellNotAtTop(readings, input.closing !== undefined, "closing", field, found);
}

/** The row to which a reference belongs should stand at the top: the one of its leg, else the first or the last. */
function tellNotAtTop(
  readings: Readings,
  given: boolean,
  which: "opening" | "closing",
  field: string,
  found: Finder,
): void {
  const known = readings.depthM.filter(Number.isFinite);
  if (!given || known.length < 2) return;
  const leg = which === "opening" ? readings.leg.indexOf("open") : readings.leg.lastIndexOf("close");
  const row = leg >= 0 ? leg : which === "opening" ? 0 : readings.count - 1;
  const top = known.reduce((least, depth) => Math.min(least, depth));
  const depth = readings.depthM[row]!;
  if (!(depth > top + AT_TOP_M)) return;
  const values = { found: depth, expected: `at the top, near ${top} m`, line: readings.line[row]! };
  found.warning("formats.reference-not-at-top", { field: `${field}.${which}` }, values);
}

/** What only another kind of run has a use for. */
function tellUnused(input: RunInput, field: string, found: Finder): void {
  const gyro = measuresTurn(input.measures as Parameters<typeof measuresTurn>[0]);
  const uses: readonly (readonly [keyof RunInput, boolean])[] = [
    ["opening", gyro],
    ["closing", gyro],
    ["ties", gyro],
    ["closure", gyro],
    ["azimuth_north", input.measures === "inclination-azimuth"],
    ["groove_bearing_deg", input.measures === "keyed-tilt"],
    ["spiral", input.measures === "keyed-tilt"],
  ];
  for (const [key, used] of uses) {
    if (used || input[key] === undefined) continue;
    const values = { found: key, expected: `nothing of the kind in a ${input.measures} run` };
    found.warning("formats.reference-unused", { field: `${field}.${key}` }, values);
  }
}
