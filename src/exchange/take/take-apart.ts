import { fail, type Issue, ok, type Result } from "#core";
import {
  type CellTable,
  type FolderReader,
  readElementCells,
  readSettingsJson,
  readTubeCells,
  tidyPath,
} from "#formats";
import { type JsonObject, type JsonValue, sha256Hex } from "#records";
import { error, note } from "../issue.ts";
import { isObject } from "../shared/objects.ts";
import { takeCalibration } from "./take-calibration.ts";
import { type Rest, takeCriterion, takeInstrument, takeJob, takeList } from "./take-job-json.ts";
import { takeRun } from "./take-run.ts";
import { takeTable } from "./take-tables.ts";
import type { Taken } from "./taken.ts";

const OWN_FILES = ["job.json", "elements.csv", "elements.xlsx", "tubes.csv"];

/**
 * Takes a job folder apart into what entries can say. What they cannot say in fields is kept as it is written; a readings file
 * whose cells cannot be told apart is kept as a whole.
 *
 * Errors: formats.file-missing, and those of the readers of job.json and of tables: a schedule or tubes that are not to be made out
 *   must be mended first. Notes: exchange.file-not-taken.
 */
export async function takeApart(folder: FolderReader): Promise<Result<Taken, readonly Issue[]>> {
  const read = readSettingsJson(folder);
  const elements = await readElementCells(folder);
  const tubes = readTubeCells(folder);
  const wrong = [read, elements, tubes].flatMap((part) => (part.ok ? [] : part.error));
  if (!read.ok || !elements.ok || !tubes.ok) return fail(wrong);
  if (elements.value === undefined) {
    const values = { found: "no such file", expected: "elements.csv or elements.xlsx" };
    return fail([error("formats.file-missing", { file: "elements.csv" }, values)]);
  }
  const missing = [
    ...lacking(elements.value, "elements.csv", SCHEDULE),
    ...lacking(tubes.value, "tubes.csv", TUBES),
  ];
  if (missing.length > 0) return fail(missing);
  // what was JSON in the file is JSON here
  const settings = isObject(read.value) ? read.value : {};
  const files = new FileKeeper(folder, await hashesOf(folder));
  const rest: Rest = {};
  const criteria = takeList(settings, "criteria", rest, takeCriterion);
  const instruments = takeList(settings, "instruments", rest, takeInstrument);
  const calibrations = takeList(settings, "calibrations", rest, (id, part) =>
    takeCalibration(id, part, (name) => files.keep(name)),
  );
  const runs = takeList(settings, "runs", rest, (id, part) => {
    const run = takeRun(id, part, folder, (name) => files.keep(name));
    if (run !== undefined) files.use(String(part["readings"]));
    return run;
  });
  const schedule = takeTable("element", ["element"], elements.value);
  const pipes = tubes.value === undefined ? undefined : takeTable("tube", ["element", "tube"], tubes.value);
  if (schedule.rest.length > 0) rest["elements"] = schedule.rest;
  if ((pipes?.rest.length ?? 0) > 0) rest["tubes"] = pipes!.rest;
  const job = takeJob(settings, rest, files.keepUnused());
  return ok({
    things: [job, ...schedule.things, ...(pipes?.things ?? []), ...criteria, ...instruments],
    calibrations,
    runs,
    blobs: files.kept,
    findings: files.notTaken().map((file) => note("exchange.file-not-taken", { file }, { found: file })),
  });
}

/** Columns without which the rows of a table are nobody's. */
const SCHEDULE = ["element", "kind", "easting_m", "northing_m", "head_level_m"];
const TUBES = ["element", "tube"];

const lacking = (table: CellTable | undefined, file: string, needed: readonly string[]): readonly Issue[] =>
  needed
    .filter((name) => table !== undefined && !table.headings.includes(name))
    .map((name) =>
      error(
        "formats.column-missing",
        { file, line: 1, field: name },
        { found: "no such heading", expected: name },
      ),
    );

/** SHA-256 of the files that may have to be kept whole; asked for beforehand, because the platform answers later. */
async function hashesOf(folder: FolderReader): Promise<ReadonlyMap<string, string>> {
  const names = folder.names.filter((name) => !OWN_FILES.includes(name) && !name.endsWith("/"));
  const hashes = new Map<string, string>();
  for (const name of names.filter((each) => each.endsWith(".csv") || each.startsWith("readings/"))) {
    const bytes = folder.read(name);
    if (bytes !== undefined) hashes.set(name, await sha256Hex(Uint8Array.from(bytes)));
  }
  return hashes;
}

/** Keeps track of which files of the folder have been taken, and how. */
class FileKeeper {
  readonly kept: Map<string, Uint8Array<ArrayBuffer>> = new Map();
  readonly #used = new Set<string>();
  readonly #folder: FolderReader;
  readonly #hashes: ReadonlyMap<string, string>;

  constructor(folder: FolderReader, hashes: ReadonlyMap<string, string>) {
    this.#folder = folder;
    this.#hashes = hashes;
  }

  use(name: string): void {
    this.#used.add(tidyPath(name));
  }

  /** Keeps the file as a whole. @returns how the log names it; undefined where there is none. */
  keep(path: string): JsonObject | undefined {
    const name = tidyPath(path);
    const [blob, bytes] = [this.#hashes.get(name), this.#folder.read(name)];
    if (blob === undefined || bytes === undefined) return undefined;
    this.use(name);
    this.kept.set(blob, Uint8Array.from(bytes));
    return { file: name, blob, bytes: bytes.length };
  }

  /** Keeps readings that no run has taken; undefined where there are none. */
  keepUnused(): JsonValue | undefined {
    const unused = [...this.#hashes.keys()].filter(
      (name) => name.startsWith("readings/") && !this.#used.has(name),
    );
    const kept = unused.flatMap((name) => this.keep(name) ?? []);
    return kept.length === 0 ? undefined : kept;
  }

  /** Files that are no part of a job and stay where they are. */
  notTaken(): readonly string[] {
    return this.#folder.names.filter(
      (name) => !OWN_FILES.includes(name) && !name.endsWith("/") && !this.#used.has(name),
    );
  }
}
