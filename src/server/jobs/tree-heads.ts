import type { Kysely } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import {
  appendLeaf,
  EMPTY_FRONT,
  frontRoot,
  leafHash,
  signHead,
  type TreeFront,
  type TreeHead,
} from "#records";
import { attemptDatabase } from "#store";
import { error } from "../issue.ts";
import type { Office } from "../office.ts";
import type { OfficeTables } from "../tables/office-tables.ts";

/** The signed heads of the jobs' trees. */
export interface TreeHeads {
  /**
   * The head over all entries that a job has now; undefined if it has none. For one size there is one head, whoever asks.
   *
   * Errors: server.log-changed, if the log no longer begins with what was signed before; those of the store.
   */
  head(job: string): Promise<Result<TreeHead | undefined, Issue>>;
  /** Heads signed so far, the smallest first. */
  kept(job: string): Promise<Result<readonly TreeHead[], Issue>>;
}

export function treeHeads({ store, signer, clock, tables: { db } }: Office): TreeHeads {
  /** as far as the trees were worked out, so that a job that grows is not hashed from its beginning each time */
  const fronts = new Map<string, TreeFront>();

  const grow = async (job: string, ids: readonly string[], last: TreeHead | undefined) => {
    let front = fronts.get(job) ?? EMPTY_FRONT;
    if (front.size > ids.length) front = EMPTY_FRONT;
    for (const id of ids.slice(front.size)) {
      front = await appendLeaf(front, await leafHash(id));
      if (front.size === last?.size && (await frontRoot(front)) !== last.root)
        return fail(error("server.log-changed", { job, size: last.size }));
    }
    if (last !== undefined && ids.length < last.size)
      return fail(error("server.log-changed", { job, size: last.size }));
    fronts.set(job, front);
    return ok(front);
  };

  const head = async (job: string): Promise<Result<TreeHead | undefined, Issue>> => {
    const kept = await lastKept(db, job);
    if (!kept.ok) return kept;
    const ids = await store.readIds(job);
    if (!ids.ok) return ids;
    if (ids.value.length === 0 && kept.value === undefined) return ok(undefined);
    const front = await grow(job, ids.value, kept.value);
    if (!front.ok) return front;
    if (kept.value?.size === front.value.size) return ok(kept.value);
    const { size } = front.value;
    const root = await frontRoot(front.value);
    const signed = await signHead({ job, size, root, at: clock().toISOString() }, signer);
    return signed.ok ? keep(db, signed.value) : signed;
  };
  return { head, kept: (job) => keptHeads(db, job) };
}

type Row = OfficeTables["tree_heads"];

const headOf = (row: Row): TreeHead => ({ format: "toeline-head/1", ...row });

function lastKept(db: Kysely<OfficeTables>, job: string): Promise<Result<TreeHead | undefined, Issue>> {
  return attemptDatabase(async () => {
    const row = await db
      .selectFrom("tree_heads")
      .selectAll()
      .where("job", "=", job)
      .orderBy("size", "desc")
      .limit(1)
      .executeTakeFirst();
    return row && headOf(row);
  });
}

function keptHeads(db: Kysely<OfficeTables>, job: string): Promise<Result<readonly TreeHead[], Issue>> {
  return attemptDatabase(async () => {
    const rows = await db
      .selectFrom("tree_heads")
      .selectAll()
      .where("job", "=", job)
      .orderBy("size")
      .execute();
    return rows.map(headOf);
  });
}

/** Of two processes that sign the same size, the first to keep its head is believed by both. */
function keep(db: Kysely<OfficeTables>, head: TreeHead): Promise<Result<TreeHead, Issue>> {
  const { job, size, root, at, key, signature } = head;
  return attemptDatabase(async () => {
    await db
      .insertInto("tree_heads")
      .values({ job, size, root, at, key, signature })
      .onConflict((conflict) => conflict.columns(["job", "size"]).doNothing())
      .execute();
    const row = await db
      .selectFrom("tree_heads")
      .selectAll()
      .where("job", "=", job)
      .where("size", "=", size)
      .executeTakeFirstOrThrow();
    return headOf(row);
  });
}
