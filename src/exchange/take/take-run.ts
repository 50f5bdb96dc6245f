import { type CellTable, type FolderReader, readReadingsCells, tidyPath } from "#formats";
import { type JsonObject, type JsonValue, thingKey } from "#records";
import { filled, isObject, without } from "../shared/objects.ts";
import { isTaken } from "./shaped.ts";
import { idOf } from "./take-job-json.ts";
import type { TakenRun } from "./taken.ts";

/** Fields of a run that `run-opened` names; the others are its settings. */
const NAMED = ["id", "element", "tube", "instrument", "measures", "calibrations", "operator", "started_at"];
const REFERENCES = ["opening", "ties", "closing"];
/** An entry of 180,000 bytes leaves room for its envelope. */
const LONGEST_CELL = 500;
const LONGEST_HEADING = 60;

/**
 * A run of job.json with its readings.
 *
 * @param keepFile keeps a file of the folder as a whole, where its cells cannot be told apart.
 * @returns undefined where an entry cannot say it.
 */
export function takeRun(
  id: string,
  part: JsonObject,
  folder: FolderReader,
  keepFile: (name: string) => JsonObject | undefined,
): TakenRun | undefined {
  const [element, instrument, tube] = [idOf(part["element"]), idOf(part["instrument"]), idOf(part["tube"])];
  const { measures, readings } = part;
  if (element === undefined || instrument === undefined || typeof measures !== "string") return undefined;
  const given = part["calibrations"];
  const calibrations = Array.isArray(given) ? (given as readonly JsonValue[]).map(idOf) : undefined;
  const areIds = calibrations?.every((each) => each !== undefined) ?? given === undefined;
  const references = referencesOf(id, part);
  const file = typeof readings === "string" ? tidyPath(readings) : undefined;
  const bytes = file === undefined ? undefined : folder.read(file);
  const cells = bytes === undefined ? undefined : cellsOf(bytes, file!);
  const kept = bytes !== undefined && cells === undefined ? keepFile(file!) : undefined;
  const optional = Object.fromEntries(
    ["tube", "operator", "started_at"].flatMap((field) => {
      const value = field === "tube" ? tube : part[field];
      return value !== undefined && isFitting(field, value) ? [[field, value] as const] : [];
    }),
  );
  const left = ["tube", "operator", "started_at"].filter(
    (field) => part[field] !== undefined && optional[field] === undefined,
  );
  const settings = filled({
    ...without(part, ...NAMED, ...(references === undefined ? [] : REFERENCES)),
    ...Object.fromEntries(left.map((field) => [field, part[field]])),
    calibrations: areIds ? undefined : given,
  });
  const opened = filled({
    run: id,
    element,
    instrument,
    measures,
    calibrations: areIds ? ((calibrations ?? []) as readonly string[]) : [],
    ...optional,
    settings,
    readings_file: kept,
  });
  if (!isTaken("run-opened", opened)) return undefined;
  return { run: id, thing: thingKey("run", id), opened, references: references ?? [], cells };
}

const SMALLEST: JsonObject = { run: "r", element: "e", instrument: "i", measures: "m", calibrations: [] };
const isFitting = (field: string, value: JsonValue): boolean =>
  isTaken("run-opened", { ...SMALLEST, [field]: value });

/** Bodies of `reference`; undefined where one does not fit, so that all stay in the settings as they are written. */
function referencesOf(run: string, part: JsonObject): readonly JsonObject[] | undefined {
  const { opening, ties, closing } = part;
  if (ties !== undefined && !Array.isArray(ties)) return undefined;
  const listed: readonly (readonly [string, JsonValue | undefined])[] = [
    ["opening", opening],
    ...((ties ?? []) as readonly JsonValue[]).map((tie) => ["tie", tie] as const),
    ["closing", closing],
  ];
  const bodies = listed.flatMap(([role, given]) => {
    if (given === undefined) return [];
    const isClean = isObject(given) && !Object.hasOwn(given, "run") && !Object.hasOwn(given, "role");
    return [isClean ? { ...given, run, role } : {}];
  });
  const fits = bodies.every((body) => isTaken("reference", body));
  // a list without ties in it says nothing more than none
  return fits ? bodies : undefined;
}

/** The cells of a readings file that readings entries can hold; undefined where the file must be kept as a whole. */
function cellsOf(bytes: Uint8Array, file: string): CellTable | undefined {
  const read = readReadingsCells(bytes, file);
  if (!read.ok) return undefined;
  const { headings, columns, count } = read.value;
  const isHeld =
    count > 0 &&
    headings.length > 0 &&
    new Set(headings).size === headings.length &&
    headings.every((heading) => heading.length <= LONGEST_HEADING && heading !== "__proto__") &&
    columns.every((column) =>
      column.every((cell) => typeof cell !== "string" || cell.length <= LONGEST_CELL),
    );
  return isHeld ? read.value : undefined;
}
