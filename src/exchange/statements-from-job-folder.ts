import { fail, type Issue, ok, type Result } from "#core";
import type { FolderReader } from "#formats";
import { type JobState, type JsonObject, type Statement, type ThingState, utf8 } from "#records";
import { error, note } from "./issue.ts";
import { without } from "./shared/objects.ts";
import { isSameValue } from "./shared/same-value.ts";
import { settle } from "./shared/settled.ts";
import { runStatements, type Said } from "./take/run-statements.ts";
import { takeApart } from "./take/take-apart.ts";
import type { TakenCalibration, TakenThing } from "./take/taken.ts";

/** What a folder says that the log does not hold yet. */
export interface FolderStatements {
  /** in the order in which they are to be written */
  readonly statements: readonly Statement[];
  /** files that the statements name, by SHA-256: to be kept before the entries */
  readonly blobs: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
  readonly findings: readonly Issue[];
}

export interface TakeOptions {
  /** who is named as the author of the entries */
  readonly author: string;
  /** the job as the log has it: only what differs becomes a statement */
  readonly state?: JobState;
}

/** Room for the envelope of an entry. */
const MOST_BODY_BYTES = 190_000;

/**
 * A job folder as statements: nothing of it is lost, and `folderFromState` makes an equal folder of them.
 *
 * What the folder does not name stays as the log has it: things are not withdrawn and fields are not cleared because they are
 * missing, only where a cell is there and empty. A field that has several values in the log is left alone if the folder's is one
 * of them.
 *
 * Errors: those of `takeApart`, exchange.too-large. Notes: exchange.file-not-taken, exchange.withdrawn.
 */
export async function statementsFromJobFolder(
  folder: FolderReader,
  { author, state }: TakeOptions,
): Promise<Result<FolderStatements, readonly Issue[]>> {
  const apart = await takeApart(folder);
  if (!apart.ok) return apart;
  const { things, calibrations, runs, blobs, findings } = apart.value;
  const held = (thing: string): ThingState | undefined => state?.things[thing];
  const said: readonly Said[] = [
    ...things.flatMap((thing) => thingStatements(thing, held(thing.thing))),
    ...calibrations.flatMap((calibration) => calibrationStatements(calibration, held(calibration.thing))),
    ...runs.flatMap((run) => runStatements(run, held(run.thing))),
  ];
  const tooLarge = said.filter(([, body]) => isTooLarge(body));
  if (tooLarge.length > 0)
    return fail(
      tooLarge.map(([kind, body]) => {
        const { run, element, criterion, calibration, instrument } = body;
        const found = String(run ?? element ?? criterion ?? calibration ?? instrument ?? "job.json");
        return error("exchange.too-large", {}, { found, kind, expected: MOST_BODY_BYTES });
      }),
    );
  const withdrawn = things.filter(({ thing }) => settle(thing, held(thing)).fields["withdrawn"] === true);
  return ok({
    statements: said.map(([kind, body]) => ({ author, kind, body })),
    blobs,
    findings: [
      ...findings,
      ...withdrawn.map(({ thing }) => note("exchange.withdrawn", {}, { found: thing })),
    ],
  });
}

/** Readings are cut to size by their own count. */
const isTooLarge = (body: JsonObject): boolean =>
  !Object.hasOwn(body, "columns") && utf8(JSON.stringify(body)).length > MOST_BODY_BYTES;

function thingStatements({ kind, ids, set }: TakenThing, held: ThingState | undefined): readonly Said[] {
  const values = (field: string) => held?.fields[field]?.map(({ value }) => value) ?? [null];
  // what was no number is one now, or the other way round
  const isMended = held?.fields["as_written"] !== undefined && set["as_written"] === undefined;
  const wanted: JsonObject = isMended ? { ...set, as_written: null } : set;
  const changed = Object.entries(wanted).filter(
    ([field, value]) => !values(field).some((known) => isSameValue(known, value)),
  );
  if (changed.length > 0) return [[kind, { ...ids, set: Object.fromEntries(changed) }]];
  // a new thing is named even where nothing is known of it
  return held === undefined && kind !== "job" ? [[kind, { ...ids, set: { as_written: null } }]] : [];
}

function calibrationStatements(
  { body, ended }: TakenCalibration,
  held: ThingState | undefined,
): readonly Said[] {
  const values = held?.fields["record"]?.map(({ value }) => value) ?? [];
  const isKnown = values.some((value) => isSameValue(value, without(body, "calibration")));
  const events = (held?.lists["ended_by"] ?? []).map(({ value }) => value);
  const news = ended.filter(
    (event) => !events.some((known) => isSameValue(known, without(event, "calibration"))),
  );
  return [
    ...(isKnown ? [] : [["calibration", body] as const]),
    ...news.map((event) => ["calibration-ended", event] as const),
  ];
}
