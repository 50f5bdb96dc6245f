import { type Kysely, sql } from "kysely";
import type { OfficeTables } from "../tables/office-tables.ts";
import type { WorkRow } from "./work-rows.ts";

/** Name of the one task that the shared queue knows: look after the piece of work that the ticket names. */
export const TICKET = "toeline-work";

/**
 * Puts a ticket for a piece of work into the shared queue, in the same transaction as its row. The row says what is to be done
 * and whether it is done; a ticket too many finds nothing to do.
 */
export async function addTicket(
  db: Kysely<OfficeTables>,
  { id, share }: Pick<WorkRow, "id" | "share">,
): Promise<void> {
  await sql`select graphile_worker.add_job(
    ${TICKET}::text, json_build_object('id', ${id}::text), job_key := ${id}::text, priority := ${share}::int
  )`.execute(db);
}
