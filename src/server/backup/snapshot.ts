import { existsSync, readFileSync } from "node:fs";
import { type Kysely, sql } from "kysely";
import { fail, type Issue, type Result } from "#core";
import { setDigest } from "#records";
import { attemptDatabase, type OpenTables } from "#store";
import { error } from "../issue.ts";
import { COPIED, type CopiedTable } from "./copied-tables.ts";
import { readEra } from "./era.ts";
import { BACK_UP_FORMAT, type Head, type Part, type Row, type Tally } from "./part.ts";
import { filesIn, nameOf, type OfficePlace } from "./place.ts";
import { type ConnectedPlace, connectPlace } from "./place-tables.ts";

/** Tables of any kind. */
export type AnyTables = Record<string, Record<string, unknown>>;
export type AnyDb = Kysely<AnyTables>;

/** All of an office at one moment, whoever writes meanwhile. */
export interface Snapshot {
  readonly head: Head;
  /** rows of all tables in the order of COPIED; to be read once */
  readonly parts: () => AsyncGenerator<Part>;
  /** after all parts were read */
  readonly tally: () => Promise<Tally>;
}

/**
 * Reads an office as it is at one moment. Both engines keep that moment for a reader while others write; nobody waits for it,
 * and nothing is changed.
 *
 * Errors: backup.source, and those of every call of a store.
 */
export async function withSnapshot<T>(
  place: OfficePlace,
  at: string,
  use: (snapshot: Snapshot) => Promise<Result<T, Issue>>,
): Promise<Result<T, Issue>> {
  if ("dataFolder" in place && !existsSync(filesIn(place.dataFolder).store))
    return fail(error("backup.source", { found: nameOf(place) }));
  const opened = await attemptDatabase(async () => connect(place));
  if (!opened.ok) return opened;
  const { store, office } = opened.value;
  const done = await attemptDatabase(() =>
    // the office's tables first: what they name is then in the log, whose moment is the later one
    within(office, (officeDb) =>
      store === office
        ? atMoment({ store: officeDb, office: officeDb })
        : within(store, (storeDb) => atMoment({ store: storeDb, office: officeDb })),
    ),
  );
  await opened.value.close();
  return done.ok ? done.value : done;

  async function atMoment(dbs: Readonly<Record<CopiedTable["set"], AnyDb>>): Promise<Result<T, Issue>> {
    const head = await headOf(place, dbs, at);
    if (head === undefined) return fail(error("backup.source", { found: nameOf(place) }));
    return use(snapshotOf(head, dbs));
  }
}

function connect(place: OfficePlace): ConnectedPlace {
  if ("database" in place) return connectPlace(place);
  const { store, office } = filesIn(place.dataFolder);
  // a folder that no server has worked on has only the store
  return connectPlace(place, { store, office: existsSync(office) ? office : ":memory:" });
}

/** One moment of a database. SQLite keeps it from the first read on, so there is one at once. */
function within<T>({ db, engine }: OpenTables<AnyTables>, use: (db: AnyDb) => Promise<T>): Promise<T> {
  if (engine.bytes === "blob")
    return db.transaction().execute(async (transaction) => {
      await sql`select count(*) from sqlite_master`.execute(transaction);
      return use(transaction);
    });
  return db
    .transaction()
    .setIsolationLevel("repeatable read")
    .setAccessMode("read only")
    .execute((transaction) => use(transaction));
}

async function headOf(
  place: OfficePlace,
  { store, office }: Readonly<Record<CopiedTable["set"], AnyDb>>,
  at: string,
): Promise<Head | undefined> {
  const names = await tableNames(store);
  if (!names.has("migrations")) return undefined;
  const officeNames = await tableNames(office);
  const hasOffice = officeNames.has("office_migrations");
  const facts = officeNames.has("office_facts") ? await factsOf(office) : new Map<string, string>();
  const id = facts.get("id");
  const seed = "database" in place ? facts.get("seed") : textOf(filesIn(place.dataFolder).key);
  return {
    format: BACK_UP_FORMAT,
    made_at: at,
    steps: {
      store: await lastStep(store, "migrations"),
      office: hasOffice ? await lastStep(office, "office_migrations") : 0,
    },
    office: id === undefined || seed === undefined ? null : { id, seed },
    era: "database" in place ? Number(facts.get("era") ?? 0) : readEra(place.dataFolder),
  };
}

const textOf = (file: string): string | undefined =>
  existsSync(file) ? readFileSync(file, "utf8").trim() : undefined;

async function factsOf(db: AnyDb): Promise<ReadonlyMap<string, string>> {
  const { rows } = await sql<{ name: string; value: string }>`select name, value from office_facts`.execute(
    db,
  );
  return new Map(rows.map(({ name, value }) => [name, value]));
}

async function lastStep(db: AnyDb, table: string): Promise<number> {
  const { rows } = await sql<{
    last: number | null;
  }>`select max(number) as last from ${sql.table(table)}`.execute(db);
  return Number(rows[0]?.last ?? 0);
}

/** Names of the tables there are, without those of other parts of the database. */
export const tableNames = async (db: AnyDb): Promise<ReadonlySet<string>> =>
  new Set(
    (await db.introspection.getTables())
      .filter((table) => table.schema === undefined || table.schema === "public")
      .map((table) => table.name),
  );

function snapshotOf(head: Head, dbs: Readonly<Record<CopiedTable["set"], AnyDb>>): Snapshot {
  const ids = new Map<string, string[]>();
  const rows: Record<string, number> = {};
  return {
    head,
    parts: async function* () {
      const names = { store: await tableNames(dbs.store), office: await tableNames(dbs.office) };
      for (const table of COPIED.filter(({ set, name }) => names[set].has(name)))
        for await (const part of pages(dbs[table.set], table)) {
          rows[table.name] = (rows[table.name] ?? 0) + part.rows.length;
          if (table.name === "entries") gather(ids, part.rows);
          yield part;
        }
    },
    tally: async () => ({ jobs: await digestsOf(ids), rows }),
  };
}

/** Takes the ids of entries in, job by job. */
export function gather(ids: Map<string, string[]>, rows: readonly Row[]): void {
  for (const { job, id } of rows as readonly { job: string; id: string }[]) {
    const held = ids.get(job);
    if (held === undefined) ids.set(job, [id]);
    else held.push(id);
  }
}

export async function digestsOf(ids: ReadonlyMap<string, readonly string[]>): Promise<Tally["jobs"]> {
  const jobs: Tally["jobs"] = {};
  for (const [job, held] of ids) jobs[job] = { size: held.length, digest: await setDigest(held) };
  return jobs;
}

/** A table page by page in the order of its key; what comes after a page begins after its last row. */
export async function* pages(db: AnyDb, { name, key, page }: CopiedTable): AsyncGenerator<Part> {
  const columns = sql.join(key.map((column) => sql.ref(column)));
  for (let last: Row | undefined; ; ) {
    const from =
      last === undefined
        ? sql``
        : sql`where (${columns}) > (${sql.join(key.map((column) => sql`${last![column]}`))})`;
    const { rows } = await sql<Row>`
      select * from ${sql.table(name)} ${from} order by ${columns} limit ${sql.lit(page)}`.execute(db);
    if (rows.length > 0) yield { table: name, rows };
    if (rows.length < page) return;
    last = rows.at(-1);
  }
}
