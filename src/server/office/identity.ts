import { randomBytes } from "node:crypto";
import { chmod, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fail, type Issue, ok, type Result } from "#core";
import { type Signer, signerFromSeed } from "#records";
import { attemptDatabase } from "#store";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import type { ServerSettings } from "../settings.ts";
import type { OpenOfficeTables } from "../tables/open-office-tables.ts";

/** Who an office is, in all its processes and after every start. */
export interface Identity {
  readonly id: string;
  readonly era: number;
  readonly signer: Signer;
}

/** 32 bytes in hexadecimal: the private key with which the heads of trees are signed. */
export const KEY_FILE = "office.key";
/** The office's life, a whole number; no back-up holds it, so that a restore cannot bring an old one back. */
export const ERA_FILE = "era";

const FIRST_ERA = "1";

type Place = Pick<ServerSettings, "database" | "dataFolder">;

/**
 * Reads who the office is; a new one is made at the first start. Beside SQLite the key and the era are files, so that neither is
 * in a copy of the databases; with PostgreSQL they are in the database, because all processes need them.
 *
 * Errors: server.file, server.era, records.key, and those of every call of a store.
 */
export async function openIdentity(place: Place, tables: OpenOfficeTables): Promise<Result<Identity, Issue>> {
  const id = await fact(tables, "id", randomBytes(8).toString("hex"));
  if (!id.ok) return id;
  const isShared = place.database !== undefined;
  const newSeed = randomBytes(32).toString("hex");
  const seed = isShared
    ? await fact(tables, "seed", newSeed)
    : await kept(join(place.dataFolder, KEY_FILE), newSeed);
  if (!seed.ok) return seed;
  const era = isShared
    ? await fact(tables, "era", FIRST_ERA)
    : await kept(join(place.dataFolder, ERA_FILE), FIRST_ERA);
  if (!era.ok) return era;
  if (!/^[1-9]\d{0,8}$/.test(era.value)) return fail(error("server.era", { found: era.value.slice(0, 20) }));
  const signer = await signerFromSeed(seed.value);
  return signer.ok ? ok({ id: id.value, era: Number(era.value), signer: signer.value }) : signer;
}

/** A fact of the office; of two processes that start at once, the first to say it is believed by both. */
function fact({ db }: OpenOfficeTables, name: string, first: string): Promise<Result<string, Issue>> {
  return attemptDatabase(async () => {
    await db
      .insertInto("office_facts")
      .values({ name, value: first })
      .onConflict((conflict) => conflict.column("name").doNothing())
      .execute();
    const row = await db
      .selectFrom("office_facts")
      .select("value")
      .where("name", "=", name)
      .executeTakeFirstOrThrow();
    return row.value;
  });
}

/** The text of a file that only this user may read; written if it is not there. */
async function kept(file: string, first: string): Promise<Result<string, Issue>> {
  const there = await attempt(() => readFile(file, "utf8"));
  if (there.ok) return ok(there.value.trim());
  const written = await attempt(async () => {
    // fails if another process was quicker, and if the file is there but may not be read
    await writeFile(file, `${first}\n`, { flag: "wx", mode: 0o600 });
    await chmod(file, 0o600);
  });
  if (written.ok) return ok(first);
  const now = await attempt(() => readFile(file, "utf8"));
  return now.ok ? ok(now.value.trim()) : fail(error("server.file", { file, found: now.error }));
}
