import { type Issue, type Job, radiansFromDegrees } from "#core";
import { Finder, gatherFindings } from "../finding/finder.ts";
import { type JsonDocument, parseJson } from "../json/parse-json.ts";
import { decodeText } from "../text/decode-text.ts";
import { checkRunCounts } from "./check-calibrations.ts";
import { checkPlace } from "./check-place.ts";
import { checkPositions } from "./check-positions.ts";
import type { FolderReader } from "./folder.ts";
import { readCalibrations, readInstruments } from "./read-calibrations.ts";
import { readCriteria } from "./read-criteria.ts";
import { type ElementsRead, readElements } from "./read-elements.ts";
import { type JobInput, readJobJson } from "./read-job-json.ts";
import { readRun } from "./read-run.ts";
import { readTubes, TUBES_FILE, tubeKey } from "./read-tubes.ts";
import type { RunContext, RunRead } from "./run-context.ts";
import { SiteNorth } from "./turn-to-grid.ts";

export const JOB_FILE = "job.json";
/** Some 50,000 runs. */
export const MAX_SETTINGS_BYTES = 30_000_000;

/** A run of job.json that cannot be worked out, with the errors that say why. */
export interface UnusableRun {
  readonly runId: string;
  readonly elementId: string;
  readonly tubeId: string | undefined;
  readonly file: string;
  readonly findings: readonly Issue[];
}

export interface ReadJob {
  /** undefined: the folder cannot be read at all */
  readonly job: Job | undefined;
  /** all findings of all files, at most 100 a file */
  readonly findings: readonly Issue[];
  /** runs left out of `job.runs`; the others go on without them */
  readonly unusableRuns: readonly UnusableRun[];
}

/**
 * Reads a job folder: settings, schedule, tubes and readings, in core units and turned to grid north.
 *
 * Everything is looked at in one pass, however much is wrong. An error does not always cost a run: what does is listed in
 * docs/formats/job-folder.md. Nothing is thrown, guessed or replaced.
 *
 * @param onProgress is told how many of the runs have been read.
 */
export async function readJobFolder(
  folder: FolderReader,
  onProgress?: (done: number, total: number) => void,
): Promise<ReadJob> {
  const finders: Finder[] = [];
  const finderFor = (file: string): Finder => {
    const fresh = new Finder(file);
    finders.push(fresh);
    return fresh;
  };
  const settings = readSettings(folder, finders);
  const schedule = await readElements(folder, finderFor);
  if (schedule !== undefined) checkPositions(schedule.elements, finderFor(scheduleFile(schedule)));
  if (settings === undefined || schedule === undefined)
    return { job: undefined, findings: gatherFindings(finders), unusableRuns: [] };
  const { job, runs } = assemble(folder, settings.input, settings.found, schedule, finderFor, onProgress);
  return { job, findings: gatherFindings(finders), unusableRuns: runs.flatMap(unusableRun) };
}

const scheduleFile = ({ elements }: ElementsRead): string => elements[0]?.place.file ?? "elements.csv";

function readSettings(
  folder: FolderReader,
  finders: Finder[],
): { input: JobInput; found: Finder } | undefined {
  const found = new Finder(JOB_FILE);
  finders.push(found);
  const bytes = folder.read(JOB_FILE);
  if (bytes === undefined) {
    found.block("formats.file-missing", {}, { found: "no such file", expected: JOB_FILE });
    return undefined;
  }
  const text = decodeText(bytes, found, MAX_SETTINGS_BYTES);
  if (text === undefined) return undefined;
  const parsed = parseJson(text);
  if (!parsed.ok) {
    const { line, ...values } = parsed.error;
    found.block("formats.json-syntax", { line }, values);
    return undefined;
  }
  const document = parsed.value;
  const lineOf = (field: string): number | undefined => lineOfField(document, field);
  const fieldFinder = (): Finder => {
    const fresh = new Finder(JOB_FILE, lineOf);
    finders.push(fresh);
    return fresh;
  };
  const settingsFound = fieldFinder();
  for (const { path, line } of document.repeatedKeys)
    settingsFound.error(
      "formats.json-key-repeated",
      { line, field: path },
      { found: path, expected: "each key once" },
    );
  const input = readJobJson(document.value, settingsFound, fieldFinder);
  return input === undefined ? undefined : { input, found: settingsFound };
}

/** Line of a field, or of the nearest thing around it for one that is not there. */
function lineOfField(document: JsonDocument, field: string): number | undefined {
  for (let path = field; path !== ""; path = path.replace(/(\.?[^.[\]]+|\[\d+\])$/, "")) {
    const line = document.lineOf(path);
    if (line !== undefined) return line;
  }
  return document.lineOf("");
}

function assemble(
  folder: FolderReader,
  input: JobInput,
  found: Finder,
  schedule: ElementsRead,
  finderFor: (file: string) => Finder,
  onProgress: ((done: number, total: number) => void) | undefined,
): { job: Job; runs: readonly RunRead[] } {
  const tubes = readTubes(folder, schedule, finderFor(TUBES_FILE));
  const instruments = readInstruments(input, found);
  const { calibrations, badIds } = readCalibrations(input, instruments, { folder, finderFor }, found);
  const north = new SiteNorth(input.place, schedule.elements);
  north.checkGrid(found);
  checkPlace(input.place, schedule.elements, found);
  const context: RunContext = {
    folder,
    input,
    elements: new Map(schedule.elements.map((element) => [element.id, element])),
    badElementIds: schedule.badIds,
    tubes: new Map(tubes.tubes.map((tube) => [tubeKey(tube.elementId, tube.id), tube])),
    badTubeKeys: tubes.badKeys,
    tubesUnreadable: tubes.unreadable,
    elementsWithTubes: new Set(tubes.tubes.map((tube) => tube.elementId)),
    instruments: new Map(instruments.map((instrument) => [instrument.id, instrument])),
    calibrations: new Map(calibrations.map((calibration) => [calibration.id, calibration])),
    badCalibrationIds: badIds,
    north,
    finderFor,
    filesRead: new Map(),
  };
  const runs = readRuns(input, context, onProgress);
  checkRunCounts(runs, calibrations);
  tellUnreferenced(folder, context, finderFor);
  const job: Job = {
    name: input.name,
    place: sitePlace(input, north),
    elements: schedule.elements,
    tubes: tubes.tubes,
    criteria: readCriteria(input, schedule.elements, found),
    decision: input.decision,
    typeA: input.typeA,
    instruments,
    calibrations,
    runs: runs.flatMap(({ run }) => run ?? []),
  };
  return { job, runs };
}

function readRuns(
  input: JobInput,
  context: RunContext,
  onProgress: ((done: number, total: number) => void) | undefined,
): RunRead[] {
  const seen = new Map<string, string>();
  return input.runs.map(({ input: raw, field, found }, index) => {
    const id = String((raw as { id?: unknown } | null)?.id ?? "");
    const first = seen.get(id);
    if (first !== undefined && id !== "")
      found.block(
        "formats.id-repeated",
        { field: `${field}.id` },
        { found: id, expected: "another id", other: first },
      );
    seen.set(id, first ?? field);
    const read = readRun(raw, field, found, context);
    onProgress?.(index + 1, input.runs.length);
    return read;
  });
}

function sitePlace({ place }: JobInput, north: SiteNorth): Job["place"] {
  const where = north.latitudeAndLongitude();
  const radians = (degrees: number | undefined): number | undefined =>
    degrees === undefined ? undefined : radiansFromDegrees(degrees);
  return {
    crs: place.crs ?? "local",
    latitudeRad: radians(place.latitude_deg) ?? where?.latitudeRad,
    longitudeRad: radians(place.longitude_deg) ?? where?.longitudeRad,
    convergenceRad: north.convergence(),
    levelDatum: place.level_datum,
  };
}

function unusableRun({ runId, elementId, tubeId, file, found, fileFound, run }: RunRead): UnusableRun[] {
  if (run !== undefined) return [];
  const findings = [...found.issues, ...(fileFound?.issues ?? [])].filter(
    (issue) => issue.severity === "error",
  );
  return [{ runId, elementId, tubeId, file, findings }];
}

function tellUnreferenced(
  folder: FolderReader,
  context: RunContext,
  finderFor: (file: string) => Finder,
): void {
  const used = new Set(context.filesRead.keys());
  for (const name of folder.names)
    if (name.startsWith("readings/") && !name.endsWith("/") && !used.has(name))
      finderFor(name).note(
        "formats.readings-unused",
        {},
        { found: name, expected: "a run in job.json that names it" },
      );
}
