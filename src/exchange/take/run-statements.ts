import type { CellTable } from "#formats";
import type { JsonObject, JsonValue, ThingState } from "#records";
import { objectOf, without } from "../shared/objects.ts";
import { type HeldRow, rowsOfRun } from "../shared/readings-of-run.ts";
import { referencesOf } from "../shared/references-of-run.ts";
import { isSameValue } from "../shared/same-value.ts";
import { settle } from "../shared/settled.ts";
import { readingsBodies } from "./readings-statements.ts";
import type { TakenRun } from "./taken.ts";

/** A kind of entry and its body. */
export type Said = readonly [kind: string, body: JsonObject];

const REASON = "not in the folder that was imported";
/** More than this a `set-aside` entry does not take. */
const MOST_ROWS = 5000;

/** What of a run the log does not hold yet. @param thing the run as the log has it; undefined for a new one. */
export function runStatements(taken: TakenRun, thing: ThingState | undefined): readonly Said[] {
  const { fields } = settle(taken.thing, thing);
  const { references, override } = newReferences(taken, thing);
  const opened = override === undefined ? taken.opened : withSetting(taken.opened, "ties", override);
  const held = rowsOfRun(thing, fields);
  const { aside, from } = changedRows(taken.cells, held);
  const bodies = taken.cells === undefined ? [] : readingsBodies(taken.run, taken.cells, from);
  const added = taken.cells === undefined ? 0 : taken.cells.count - from;
  const rows = held.length + added;
  const isClosed = fields["closed"] !== undefined && objectOf(fields["closed"])["rows"] === rows;
  const outcome = objectOf(fields["closed"])["outcome"] ?? "complete";
  return [
    ...(isSameValue(without(opened, "run"), fields["opened"]) ? [] : [["run-opened", opened] as const]),
    ...references.map((body) => ["reference", body] as const),
    ...asideBodies(taken.run, aside).map((body) => ["set-aside", body] as const),
    ...bodies.map((body) => ["readings", body] as const),
    ...(taken.cells === undefined || isClosed
      ? []
      : [["run-closed", { run: taken.run, outcome, rows }] as const]),
  ];
}

const withSetting = (opened: JsonObject, key: string, value: JsonValue): JsonObject => ({
  ...opened,
  settings: { ...objectOf(opened["settings"]), [key]: value },
});

/** References that are new. Ties that are not a continuation of those in the log stand in the settings of the run, which come first. */
function newReferences(
  { references }: TakenRun,
  thing: ThingState | undefined,
): { readonly references: readonly JsonObject[]; readonly override: JsonValue | undefined } {
  const known = referencesOf(thing);
  const plain = (body: JsonObject) => without(body, "run", "role");
  const changed = references.filter((body) => {
    const { role } = body;
    return (role === "opening" || role === "closing") && !isSameValue(plain(body), known[role]);
  });
  const ties = references.filter(({ role }) => role === "tie");
  const isLonger = known.ties.every((tie, i) => ties[i] !== undefined && isSameValue(plain(ties[i]), tie));
  return isLonger
    ? { references: [...changed, ...ties.slice(known.ties.length)], override: undefined }
    : { references: changed, override: ties.map(plain) };
}

/**
 * How the rows of the log become those of the folder: rows that the folder does not have are set aside, and those from the first
 * place on at which it has others are written anew.
 *
 * @returns `from`: first row of the folder that is written.
 */
function changedRows(
  cells: CellTable | undefined,
  held: readonly HeldRow[],
): { readonly aside: readonly HeldRow[]; readonly from: number } {
  const active = held.filter(({ isAside }) => !isAside);
  if (cells === undefined) return { aside: [], from: 0 };
  const wanted = Array.from({ length: active.length > 0 ? cells.count : 0 }, (_, row) =>
    textOfFolder(cells, row),
  );
  const missing: HeldRow[] = [];
  let found = 0;
  for (const row of active)
    if (found < wanted.length && wanted[found] === textOfHeld(row)) found++;
    else missing.push(row);
  if (found === wanted.length || missing.length === 0) return { aside: missing, from: found };
  const same = active.findIndex((row, i) => wanted[i] !== textOfHeld(row));
  return { aside: active.slice(same), from: same };
}

type Pairs = readonly (readonly [string, unknown])[];
const rowText = (pairs: Pairs): string =>
  JSON.stringify(pairs.filter(([, cell]) => cell !== null).sort(([a], [b]) => (a < b ? -1 : 1)));

const textOfFolder = ({ headings, columns }: CellTable, row: number): string =>
  rowText(headings.map((heading, i) => [heading, columns[i]![row] ?? null]));

const textOfHeld = ({ columns, row }: HeldRow): string =>
  rowText(Object.entries(columns).map(([heading, cells]) => [heading, cells[row] ?? null]));

function asideBodies(run: string, rows: readonly HeldRow[]): readonly JsonObject[] {
  const byEntry = new Map<string, number[]>();
  for (const { entry, row } of rows) byEntry.set(entry, [...(byEntry.get(entry) ?? []), row]);
  return [...byEntry].flatMap(([readings, all]) =>
    Array.from({ length: Math.ceil(all.length / MOST_ROWS) }, (_, i) => ({
      run,
      readings,
      rows: all.slice(i * MOST_ROWS, (i + 1) * MOST_ROWS),
      reason: REASON,
    })),
  );
}
