import {
  type Calibration,
  type ClosureModel,
  depthScale,
  type HeadingReference,
  type Measures,
  ned,
  radiansFromDegrees,
  type SurveyRun,
} from "#core";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import { isoOf, momentOf } from "../text/iso-time.ts";
import { checkCalibrations } from "./check-calibrations.ts";
import { checkItem } from "./check-item.ts";
import { checkAgainstElement } from "./check-run.ts";
import { tidyPath } from "./folder.ts";
import { readContinuousLog } from "./read-continuous-log.ts";
import { readErrors } from "./read-errors.ts";
import { type ReadingsRead, readReadings } from "./read-readings.ts";
import { type References, readReferences } from "./read-references.ts";
import { tubeKey } from "./read-tubes.ts";
import type { FileRead, RunContext, RunRead } from "./run-context.ts";
import { idText } from "./schema/basics.ts";
import { type RunInput, runSchema } from "./schema/run-schema.ts";

/**
 * Reads one run of job.json with its readings, and says whether it can be worked out.
 *
 * Not usable: a run whose shape is wrong; whose element, tube or readings file is missing; whose needed cells cannot be
 * read; whose references cannot be turned to grid north. Everything else is told, and the run is still worked out.
 */
export function readRun(raw: unknown, field: string, found: Finder, context: RunContext): RunRead {
  const input = checkItem(runSchema, raw, field, found);
  if (input === undefined) return { ...named(raw), found, fileFound: undefined, run: undefined };
  const ids = named(input);
  checkNames(input, ids, field, found, context);
  const file = readFile(input, ids, field, found, context);
  const read = file?.read;
  if (read === undefined) return { ...ids, found, fileFound: file?.found, run: undefined };
  const startedAt = startOf(read, input);
  const calibrations = checkCalibrations(input, field, read, startedAt, context, found);
  const date = dateOfNorth(input, field, startedAt, calibrations, found);
  const references = readReferences(input, field, read.readings, date, context.north, found);
  const declaredErrors = readErrors(input.errors, `${field}.errors`, found);
  const element = context.elements.get(ids.elementId);
  const tube = ids.tubeId === undefined ? undefined : context.tubes.get(tubeKey(ids.elementId, ids.tubeId));
  if (element !== undefined) checkAgainstElement(read.readings, element, tube, ids.file, file!.found);
  const blocked = found.blocked || file!.found.blocked;
  const run = blocked
    ? undefined
    : surveyRun(input, ids, field, read, { startedAt, calibrations, references, declaredErrors }, context);
  return { ...ids, found, fileFound: file!.found, run };
}

type Ids = Pick<RunRead, "runId" | "elementId" | "tubeId" | "file">;

/** What a run calls itself, as far as it can be made out. */
function named(raw: unknown): Ids {
  const record = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>) : {};
  const textOf = (key: string): string =>
    typeof record[key] === "string" || typeof record[key] === "number" ? idText(record[key]) : "";
  const tube = textOf("tube");
  return {
    runId: textOf("id"),
    elementId: textOf("element"),
    tubeId: tube === "" ? undefined : tube,
    file: tidyPath(textOf("readings")),
  };
}

function checkNames(input: RunInput, ids: Ids, field: string, found: Finder, context: RunContext): void {
  if (!context.elements.has(ids.elementId)) {
    const bad = context.badElementIds.has(ids.elementId);
    const code = bad ? "formats.element-unusable" : "formats.element-unknown";
    const known = nearestWord(ids.elementId, [...context.elements.keys()]);
    const expected = bad ? "an element whose line can be used" : (known ?? "an element of the schedule");
    found.block(code, { field: `${field}.element` }, { found: ids.elementId, expected });
  } else if (ids.tubeId !== undefined) checkTube(ids.elementId, ids.tubeId, field, found, context);
  else if (context.elementsWithTubes.has(ids.elementId)) {
    const values = { found: "no tube", expected: `a tube of ${ids.elementId}` };
    found.warning("formats.tube-not-named", { field }, values);
  }
  if (ids.tubeId !== undefined && input.start !== undefined) {
    const values = { found: "a tube and a start", expected: "one of them; the tube's head is used" };
    found.warning("formats.start-with-tube", { field: `${field}.start` }, values);
  }
  const instrument = idText(input.instrument);
  if (!context.instruments.has(instrument)) {
    const expected = nearestWord(instrument, [...context.instruments.keys()]) ?? "an instrument of the job";
    found.error(
      "formats.instrument-unknown",
      { field: `${field}.instrument` },
      { found: instrument, expected },
    );
  }
}

function checkTube(
  elementId: string,
  tubeId: string,
  field: string,
  found: Finder,
  context: RunContext,
): void {
  const key = tubeKey(elementId, tubeId);
  if (context.tubes.has(key)) return;
  const unusable = context.tubesUnreadable || context.badTubeKeys.has(key);
  const code = unusable ? "formats.tube-unusable" : "formats.tube-unknown";
  const values = { found: tubeId, expected: `a tube of ${elementId} in tubes.csv` };
  found.block(code, { field: `${field}.tube` }, values);
}

function readFile(
  input: RunInput,
  ids: Ids,
  field: string,
  found: Finder,
  context: RunContext,
): FileRead | undefined {
  const at = { field: `${field}.readings` };
  const earlier = context.filesRead.get(ids.file);
  if (earlier !== undefined) {
    const values = { found: ids.file, expected: "a file of its own", other: earlier.firstRun };
    found.error("formats.readings-shared", at, values);
    if (earlier.measures === input.measures) return earlier;
  }
  const bytes = context.folder.read(ids.file);
  if (bytes === undefined) {
    const expected = nearestWord(ids.file, context.folder.names) ?? "a file of the job folder";
    found.block("formats.file-missing", at, { found: ids.file, expected });
    return undefined;
  }
  const fileFound = context.finderFor(ids.file);
  const read = readRows(bytes, input, fileFound, context);
  const fresh: FileRead = { read, found: fileFound, firstRun: ids.runId, measures: input.measures };
  if (earlier === undefined) context.filesRead.set(ids.file, fresh);
  return fresh;
}

function readRows(
  bytes: Uint8Array,
  input: RunInput,
  fileFound: Finder,
  context: RunContext,
): ReadingsRead | undefined {
  const measures = input.measures as Measures;
  if (input.sampling !== "continuous") return readReadings(bytes, measures, fileFound);
  const settings = {
    steady: input.steady,
    metresPerCount: metresPerCount(input, context),
    closes: input.closing !== undefined,
    ties: input.ties?.length ?? 0,
  };
  return readContinuousLog(bytes, measures, settings, fileFound);
}

/** By the depth scale that the run names last; NaN without one. */
function metresPerCount(input: RunInput, context: RunContext): number {
  const scales = (input.calibrations ?? []).flatMap((id) => {
    const calibration = context.calibrations.get(idText(id));
    return calibration?.kind === "depth-scale" ? calibration : [];
  });
  const last = scales.at(-1);
  return last === undefined ? Number.NaN : depthScale(last.lengthM, last.counts).metresPerCount;
}

/** Moment at which the run began: the file's own, else what the run says. */
function startOf(read: ReadingsRead, input: RunInput): string | undefined {
  if (read.startedAt !== undefined) return read.startedAt;
  const given = input.started_at === undefined ? undefined : momentOf(input.started_at);
  return given === undefined ? undefined : isoOf(given.ms);
}

/**
 * Date for the magnetic model: that of the run, else that of its latest calibration, which is told. Declination changes by some
 * tenths of a degree a year, so the day of a calibration serves where the run itself has no date.
 */
function dateOfNorth(
  input: RunInput,
  field: string,
  startedAt: string | undefined,
  calibrations: readonly Calibration[],
  found: Finder,
): string | undefined {
  if (startedAt !== undefined) return startedAt;
  const latest = calibrations
    .map(({ madeAt }) => madeAt)
    .sort()
    .at(-1);
  const norths = [input.opening?.north, input.closing?.north, input.azimuth_north];
  if (latest !== undefined && norths.includes("magnetic"))
    found.warning(
      "formats.date-from-calibration",
      { field },
      { found: "no date", used: latest, expected: "started_at in the run or dates in its times" },
    );
  return latest;
}

function surveyRun(
  input: RunInput,
  ids: Ids,
  field: string,
  read: ReadingsRead,
  parts: {
    readonly startedAt: string | undefined;
    readonly calibrations: readonly Calibration[];
    readonly references: References;
    readonly declaredErrors: SurveyRun["declaredErrors"];
  },
  context: RunContext,
): SurveyRun {
  const { limits } = context.input;
  const { startedAt, calibrations, references, declaredErrors } = parts;
  const closureLimitDeg = input.closure_limit_deg ?? limits.closure_limit_deg;
  return {
    id: ids.runId,
    elementId: ids.elementId,
    tubeId: ids.tubeId,
    instrumentId: idText(input.instrument),
    measures: input.measures as Measures,
    calibrationIds: calibrations.map((calibration) => calibration.id),
    zeroed: input.zeroed ?? false,
    operator: input.operator,
    startedAt,
    ...references,
    closureModel: (input.closure ?? "linear-time") as ClosureModel,
    closureLimitRad: closureLimitDeg === undefined ? undefined : radiansFromDegrees(closureLimitDeg),
    azimuthNorth: input.azimuth_north as HeadingReference["givenNorth"] | undefined,
    grooveBearingRad:
      input.groove_bearing_deg === undefined ? undefined : radiansFromDegrees(input.groove_bearing_deg),
    spiral: (input.spiral ?? []).map(([depthM, twist]) => ({ depthM, twistRad: radiansFromDegrees(twist) })),
    start:
      input.start === undefined || ids.tubeId !== undefined
        ? undefined
        : {
            ...ned(input.start.northing_m, input.start.easting_m, -input.start.level_m),
            standardUncertaintyM: input.start.uncertainty_m,
          },
    depthZeroM: input.depth_zero_m ?? 0,
    stationLimitM: input.station_limit_m ?? limits.station_limit_m,
    declaredErrors,
    readings: read.readings,
    file: ids.file,
    field,
  };
}
