import type { Issue } from "#core";
import { elementHeadings, type FolderReader, folderFromFiles, tubeHeadings } from "#formats";
import {
  causalOrder,
  type Entry,
  type JobState,
  type JsonObject,
  type JsonValue,
  type ThingState,
  walkChains,
} from "#records";
import { isFileName, readingsName } from "./give/file-names.ts";
import { type GivenRun, giveRun } from "./give/give-run.ts";
import { giveCalibration, giveCriterion, giveInstrument, giveSettings } from "./give/give-settings.ts";
import { jobText } from "./give/job-text.ts";
import { readingsText } from "./give/readings-text.ts";
import { tableText } from "./give/tables.ts";
import { warning } from "./issue.ts";
import { AS_WRITTEN, UNUSED_READINGS } from "./shared/names.ts";
import { isObject, objectOf } from "./shared/objects.ts";
import { settle, thingsOf } from "./shared/settled.ts";

/** Bytes of a file by its SHA-256; undefined where it is not here. */
export type ReadBlob = (blob: string) => Promise<Uint8Array | undefined>;

/** A job of the log as a job folder. */
export interface GivenFolder {
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  readonly folder: FolderReader;
  readonly findings: readonly Issue[];
}

/**
 * The job of a log as a job folder, which is read and worked out like any other. Of a job that came from a folder, an equal folder
 * comes back: the same things in the same order, the same numbers bit for bit.
 *
 * Elements, tubes and criteria that were withdrawn are left out, and readings that were set aside leave their file: the log keeps
 * them. Things stand in the order in which they were first named.
 *
 * @param entries those that the state was made of; they give the order.
 * @param readBlob files that are kept as a whole.
 * Warnings: exchange.conflict, exchange.incomplete, exchange.rows-missing, exchange.run-not-opened, exchange.file-not-here,
 *   exchange.file-renamed.
 */
export async function folderFromState(
  state: JobState,
  entries: Iterable<Entry>,
  readBlob: ReadBlob = async () => undefined,
): Promise<GivenFolder> {
  const giver = new FolderGiver(state, entries, readBlob);
  return giver.give();
}

class FolderGiver {
  readonly #state: JobState;
  readonly #places: ReadonlyMap<string, number>;
  readonly #readBlob: ReadBlob;
  readonly #files = new Map<string, string | Uint8Array>();
  readonly #findings: Issue[] = [];

  constructor(state: JobState, entries: Iterable<Entry>, readBlob: ReadBlob) {
    this.#state = state;
    this.#places = new Map(causalOrder(walkChains(entries)).map(({ entry }, i) => [entry.id, i]));
    this.#readBlob = readBlob;
  }

  async give(): Promise<GivenFolder> {
    if (!this.#state.isComplete)
      this.#findings.push(warning("exchange.incomplete", {}, { found: this.#lacking() }));
    const job = this.#settled("job", this.#state.things["job"]);
    const written = objectOf(job[AS_WRITTEN]);
    const rowsOf = (key: string) => {
      const rows = written[key];
      return Array.isArray(rows) ? (rows as readonly JsonValue[]).filter(isObject) : [];
    };
    const elements = this.#things("element", ([element = ""], fields) => ({ ...fields, element }));
    const tubes = this.#things("tube", ([element = "", tube = ""], fields) => ({ ...fields, element, tube }));
    const pipes = [...tubes, ...rowsOf("tubes")];
    const calibrations = this.#things("calibration", ([id = ""], fields, thing) =>
      giveCalibration(id, fields, thing),
    );
    await this.#keptLogs();
    const runs = await this.#runs();
    const settings = giveSettings(job, {
      criteria: this.#things("criterion", ([id = ""], fields) => giveCriterion(id, fields)),
      instruments: this.#things("instrument", ([id = ""], fields) => giveInstrument(id, fields)),
      calibrations,
      runs,
    });
    await this.#unusedReadings(job[UNUSED_READINGS]);
    const own: readonly (readonly [string, string])[] = [
      ["job.json", jobText(settings)],
      ["elements.csv", tableText(elementHeadings, NEEDED, [...elements, ...rowsOf("elements")])],
      ...(pipes.length > 0
        ? [["tubes.csv", tableText(tubeHeadings, ["element", "tube"], pipes)] as const]
        : []),
    ];
    const files = new Map<string, string | Uint8Array>([...own, ...this.#files]);
    return { files, folder: folderFromFiles(files), findings: this.#findings };
  }

  /** Fields of a thing, one value each; what is not settled is told. */
  #settled(key: string, thing: ThingState | undefined): JsonObject {
    const { fields, findings } = settle(key, thing);
    this.#findings.push(...findings);
    return fields;
  }

  /** Things that were not withdrawn, in their order. */
  #things<T>(
    type: string,
    give: (ids: readonly string[], fields: JsonObject, thing: ThingState) => T,
  ): readonly T[] {
    return thingsOf(this.#state, type, (thing) => this.#places.get(thing.entries[0] ?? "") ?? 0).flatMap(
      ({ key, ids, thing }) => {
        const fields = this.#settled(key, thing);
        return fields["withdrawn"] === true ? [] : [give(ids, fields, thing)];
      },
    );
  }

  async #runs(): Promise<readonly JsonObject[]> {
    const all = this.#things("run", ([id = ""], fields, thing) => ({
      id,
      run: fields["opened"] === undefined ? undefined : giveRun(id, thing, fields),
    }));
    const given: JsonObject[] = [];
    for (const { id, run } of all) {
      if (run !== undefined) given.push(await this.#run(id, run));
      else this.#findings.push(warning("exchange.run-not-opened", {}, { found: id }));
    }
    return given;
  }

  /** Writes the readings of a run. @returns its part of job.json. */
  async #run(id: string, { entry, file, kept, rows, held, expected }: GivenRun): Promise<JsonObject> {
    if (expected !== undefined && held !== expected)
      this.#findings.push(warning("exchange.rows-missing", {}, { run: id, found: held, expected }));
    const content =
      kept === undefined ? (rows.length > 0 ? readingsText(rows) : undefined) : await this.#blob(kept);
    // a file that was not there when the folder was taken over is not there now
    if (content === undefined) return file === undefined ? { ...entry, readings: this.#freeName(id) } : entry;
    const isFree = file !== undefined && isFileName(file) && this.#isFreeFor(file, content);
    const name = isFree ? file : this.#freeName(id);
    if (file !== undefined && !isFree)
      this.#findings.push(warning("exchange.file-renamed", { file: name }, { found: file, used: name }));
    this.#files.set(name, content);
    return isFree ? entry : { ...entry, readings: name };
  }

  /** Two runs may name one file, as long as they say the same of what is in it. */
  #isFreeFor(name: string, content: string | Uint8Array): boolean {
    const there = this.#files.get(name);
    return there === undefined || (typeof there === "string" && there === content);
  }

  #freeName(run: string): string {
    const taken = new Set([...this.#files.keys()].map((name) => name.toLowerCase()));
    return readingsName(run, (name) => taken.has(name.toLowerCase()));
  }

  /** Raw logs that calibrations name. */
  async #keptLogs(): Promise<void> {
    for (const thing of Object.values(this.#state.things)) {
      const record = objectOf(thing.fields["record"]?.at(-1)?.value);
      if (isObject(record["log_file"])) await this.#keptFile(record["log_file"]);
    }
  }

  async #unusedReadings(list: JsonValue | undefined): Promise<void> {
    const kept = Array.isArray(list) ? (list as readonly JsonValue[]).filter(isObject) : [];
    for (const each of kept) await this.#keptFile(each);
  }

  async #keptFile(kept: JsonObject): Promise<void> {
    const { file } = kept;
    const content = await this.#blob(kept);
    if (content === undefined || typeof file !== "string" || !isFileName(file)) return;
    if (!this.#files.has(file)) this.#files.set(file, content);
  }

  async #blob({ blob, file }: JsonObject): Promise<Uint8Array | undefined> {
    const content = typeof blob === "string" ? await this.#readBlob(blob) : undefined;
    if (content === undefined)
      this.#findings.push(warning("exchange.file-not-here", {}, { found: String(file), blob: String(blob) }));
    return content;
  }

  /** What is missing, waiting or unread, in numbers. */
  #lacking(): number {
    const { devices, unread } = this.#state;
    const behind = Object.values(devices).map(({ highest, reached, waiting }) =>
      Math.max(highest - reached, waiting),
    );
    return behind.reduce((sum, count) => sum + count, unread.length);
  }
}

/** Columns without which there is no schedule. */
const NEEDED = ["element", "kind", "easting_m", "northing_m", "head_level_m"];
