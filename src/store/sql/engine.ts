import { type CreateTableBuilder, type Expression, type Kysely, sql } from "kysely";

/** Where the two SQL databases differ. Everything else of the store is the same for both. */
export interface Engine {
  /** column type of whole numbers up to 2^53 */
  readonly integer: "integer" | "bigint";
  readonly bytes: "blob" | "bytea";
  /** ends a table so that the database refuses values of another type than the column's */
  strict<T extends string, C extends string>(table: CreateTableBuilder<T, C>): CreateTableBuilder<T, C>;
  /** makes other processes that are about to create tables wait until this transaction ends */
  lockSchema<T>(transaction: Kysely<T>): Promise<void>;
  /** texts compared by their code units, as this program does, whatever the language of the database */
  byCodeUnits(column: Expression<string>): Expression<string>;
}

/** Any number; it only has to be the same in all processes. */
const SCHEMA_LOCK = 7_056_531;

export const sqliteEngine: Engine = {
  integer: "integer",
  bytes: "blob",
  strict: (table) => table.modifyEnd(sql`strict`),
  // a transaction that begins with a write holds the only write lock there is
  lockSchema: () => Promise.resolve(),
  byCodeUnits: (column) => column,
};

export const postgresEngine: Engine = {
  integer: "bigint",
  bytes: "bytea",
  strict: (table) => table,
  lockSchema: async (transaction) => {
    await sql`select pg_advisory_xact_lock(${SCHEMA_LOCK})`.execute(transaction);
  },
  byCodeUnits: (column) => sql<string>`${column} collate "C"`,
};
