import type { Transaction } from "kysely";
import { fail, type Issue, ok, type Result } from "#core";
import { attemptDatabase } from "#store";
import { error } from "../issue.ts";
import type { OfficeTables } from "../tables/office-tables.ts";
import type { OpenOfficeTables } from "../tables/open-office-tables.ts";
import { taskOf } from "./tasks/registry.ts";
import type { WorkRequest } from "./work-queue.ts";
import { enqueue, unfinished, type WorkRow } from "./work-rows.ts";

/** So many pieces of one person may wait or run. */
export const MAX_UNFINISHED_PER_PERSON = 100;
/** And so many of all people. */
export const MAX_UNFINISHED = 2000;

/**
 * Writes a request into the table, unless it is there already or too much is waiting.
 *
 * @param onNew in the same transaction, for a piece that was not waiting before.
 */
export async function takeRequest(
  { db }: OpenOfficeTables,
  request: WorkRequest,
  at: string,
  onNew: (transaction: Transaction<OfficeTables>, row: WorkRow) => Promise<void>,
): Promise<Result<WorkRow, Issue>> {
  const task = taskOf(request.task);
  if (task === undefined)
    return fail(error("work.unknown-task", { found: request.task.slice(0, 100) }, "task"));
  const input = task.readInput(request.input);
  if (!input.ok) return input;
  const taken = await attemptDatabase(() =>
    db.transaction().execute(async (transaction) => {
      // begins with a write: other writers wait until this transaction has ended
      const { row, isNew } = await enqueue(transaction, request, at);
      if (!isNew) return row;
      const { mine, all } = await unfinished(transaction, request.requestedBy);
      if (mine > MAX_UNFINISHED_PER_PERSON || all > MAX_UNFINISHED) {
        await transaction.deleteFrom("work").where("id", "=", row.id).execute();
        return undefined;
      }
      await onNew(transaction, row);
      return row;
    }),
  );
  if (!taken.ok) return taken;
  const most = MAX_UNFINISHED_PER_PERSON;
  return taken.value === undefined ? fail(error("work.queue-full", { expected: most })) : ok(taken.value);
}
