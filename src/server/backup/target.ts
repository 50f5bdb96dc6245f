import { sql } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import { attemptDatabase, runMigrations, storeMigrations } from "#store";
import { error } from "../issue.ts";
import { officeMigrations } from "../tables/migrations.ts";
import { eraAfter } from "./era.ts";
import { checkLoaded, type Dbs, filledTables, loadParts } from "./load.ts";
import type { Head, Part, Tally } from "./part.ts";
import { type ConnectedPlace, connectPlace } from "./place-tables.ts";
import type { AnyDb } from "./snapshot.ts";

/** What is written into a new place. */
export interface Copy {
  readonly head: Head;
  readonly parts: () => AsyncIterable<Part>;
  /** asked for after all parts were read */
  readonly tally: () => Promise<Tally>;
}

/** How far a copy is, in rows: written, then read back and checked. */
export interface CopyProgress {
  readonly onWritten: (rows: number) => void;
  readonly onChecked: (rows: number) => void;
}

/** The step that made the table of the office's facts: id, key, era. */
const FACTS_STEP = 3;
/** Any number that no other part locks by. */
const RESTORING = 7_056_533;

/** Errors: backup.newer. */
export function whyTooNew({ steps }: Head): Issue | undefined {
  const known = { store: storeMigrations.steps.length, office: officeMigrations.steps.length };
  for (const set of ["store", "office"] as const)
    if (steps[set] > known[set]) return error("backup.newer", { found: steps[set], expected: known[set] });
  return undefined;
}

/**
 * Brings empty tables to the state in which the copy was made, so that its rows fit, whatever later versions have added. The steps
 * after it are taken when the rows are there.
 */
export async function makeTables(
  { store, office }: ConnectedPlace,
  { steps }: Head,
): Promise<Result<true, Issue>> {
  const made = await runMigrations(store.db, store.engine, storeMigrations as never, steps.store);
  if (!made.ok) return made;
  const upTo = Math.max(steps.office, FACTS_STEP);
  return runMigrations(office.db, office.engine, officeMigrations as never, upTo);
}

export async function finishTables({ store, office }: ConnectedPlace): Promise<Result<true, Issue>> {
  const made = await runMigrations(store.db, store.engine, storeMigrations as never);
  return made.ok ? runMigrations(office.db, office.engine, officeMigrations as never) : made;
}

/** In one transaction: all of the copy, checked, or nothing. @returns what was copied. */
export async function copyIntoDatabase(
  address: string,
  copy: Copy,
  now: Date,
  progress: CopyProgress,
): Promise<Result<Tally, Issue>> {
  const connected = await attemptDatabase(async () => connectPlace({ database: address }));
  if (!connected.ok) return connected;
  const place = connected.value;
  const made = await makeTables(place, copy.head);
  const done = made.ok
    ? await allOrNothing(place.store.db, async (db) => {
        await sql`select pg_advisory_xact_lock(${RESTORING})`.execute(db);
        return copyInto({ store: db, office: db }, copy, progress, () =>
          writeFacts(db, copy.head, now, true),
        );
      })
    : made;
  const finished = done.ok ? await finishTables(place) : done;
  await place.close();
  return finished.ok ? done : finished;
}

/** Fills empty tables and reads them back. */
export async function copyInto(
  dbs: Dbs,
  { parts, tally }: Copy,
  { onWritten, onChecked }: CopyProgress,
  finish: () => Promise<void>,
): Promise<Result<Tally, Issue>> {
  const filled = await filledTables(dbs);
  if (filled.length > 0) return fail(error("backup.not-empty", { found: filled.join(", ") }));
  const loaded = await loadParts(dbs, parts(), onWritten);
  if (!loaded.ok) return loaded;
  const expected = await tally();
  const checked = await checkLoaded(dbs, expected, onChecked);
  if (!checked.ok) return checked;
  await finish();
  return ok(expected);
}

/** Who the office is. @param isShared key and era are in the database too, and not in files. */
export async function writeFacts(db: AnyDb, head: Head, now: Date, isShared: boolean): Promise<void> {
  const { rows } = await sql<{ value: string }>`
    select value from office_facts where name = 'era'`.execute(db);
  const known = [head.era, ...rows.map(({ value }) => Number(value))].filter(Number.isSafeInteger);
  const { id, seed } = head.office ?? {};
  const facts: Record<string, string | undefined> = isShared
    ? { id, seed, era: String(eraAfter(known, now)) }
    : { id };
  for (const [name, value] of Object.entries(facts)) {
    if (value === undefined) continue;
    await sql`
      insert into office_facts (name, value) values (${name}, ${value})
      on conflict (name) do update set value = ${value}`.execute(db);
  }
}

/** Leaves the transaction so that the database takes everything back. */
class TakenBack extends Error {}

/** A transaction that is kept only if what it did is well. */
export async function allOrNothing<T>(
  db: AnyDb,
  use: (db: AnyDb) => Promise<Result<T, Issue>>,
): Promise<Result<T, Issue>> {
  let outcome: Result<T, Issue> | undefined;
  const done = await attemptDatabase(() =>
    db.transaction().execute(async (transaction) => {
      outcome = await use(transaction);
      if (!outcome.ok) throw new TakenBack("taken back");
      return outcome;
    }),
  );
  if (outcome?.ok === false) return outcome;
  return done.ok ? done.value : done;
}
