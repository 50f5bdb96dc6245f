import { ok } from "#core";
import { attemptDatabase } from "#store";
import type { OpenOfficeTables } from "../tables/open-office-tables.ts";
import type { WorkQueue } from "./work-queue.ts";
import { cancelRow, countStates, findRow, rowsOfJob, workOf } from "./work-rows.ts";

/** What both queues do alike: looking into the table. */
export function queueCalls({
  db,
}: OpenOfficeTables): Pick<WorkQueue, "find" | "ofJob" | "cancel" | "counts"> {
  return {
    find: async (id) => {
      const row = await attemptDatabase(() => findRow(db, id));
      return row.ok ? ok(row.value && workOf(row.value)) : row;
    },
    ofJob: async (job) => {
      const rows = await attemptDatabase(() => rowsOfJob(db, job));
      return rows.ok ? ok(rows.value.map(workOf)) : rows;
    },
    // who runs it finds that it is not wanted any more
    cancel: async (id) => {
      const row = await attemptDatabase(() => cancelRow(db, id));
      return row.ok ? ok(row.value && workOf(row.value)) : row;
    },
    counts: () => attemptDatabase(() => countStates(db)),
  };
}
