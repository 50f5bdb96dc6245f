import type { AccountTables } from "./account-tables.ts";
import type { FrameTables } from "./frame-tables.ts";
import type { WorkTables } from "./work-tables.ts";

/**
 * All tables of a server beside the store's, by name, as the last step of `migrations.ts` leaves them. A part that needs tables
 * of its own adds a file like account-tables.ts, joins it here, and adds a step.
 */
export interface OfficeTables extends AccountTables, FrameTables, WorkTables {}
