import { existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { fail, ok, type Result } from "#core";
import { openPostgresStore, openSqliteStore, type Store } from "#store";
import { sentenceOf } from "#text";

/** Where the log is kept, as the command line says it. */
export interface LogPlace {
  readonly data?: string;
  readonly database?: string;
}

/** The log's file in a data folder. */
const LOG_FILE = "toeline.sqlite";

/**
 * Opens the store that the command line names: a file in a data folder, or a PostgreSQL database.
 *
 * @param isNewAllowed whether a data folder may be made where there is none.
 * @returns the store, or in a sentence why not.
 */
export async function openLog(
  { data, database }: LogPlace,
  isNewAllowed: boolean,
): Promise<Result<Store, string>> {
  if ((data === undefined) === (database === undefined))
    return fail("Say where the log is: --data DIR or --database postgres://…, one of them.");
  if (database !== undefined) {
    if (!/^postgres(ql)?:\/\//.test(database)) return fail("--database: give an address postgres://…");
    return told(await openPostgresStore(database));
  }
  const folder = data!;
  if (isNewAllowed) mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = join(folder, LOG_FILE);
  if (!isNewAllowed && !existsSync(file)) return fail(`There is no log in ${folder}.`);
  return told(await openSqliteStore(file));
}

const told = (opened: Awaited<ReturnType<typeof openSqliteStore>>): Result<Store, string> =>
  opened.ok ? ok(opened.value) : fail(sentenceOf(opened.error));
