import type { Kysely } from "kysely";
import type { ServerSettings } from "../settings.ts";
import type { OfficeTables } from "../tables/office-tables.ts";

/** What everything about accounts stands on. */
export interface Book {
  readonly db: Kysely<OfficeTables>;
  readonly settings: ServerSettings;
  readonly clock: () => Date;
}

/** Where a request comes from, for what is written down about it. */
export interface Caller {
  readonly address: string;
  /** what the browser or program calls itself */
  readonly program: string;
}

export const SECOND_MS = 1000;
export const MINUTE_MS = 60 * SECOND_MS;
export const HOUR_MS = 60 * MINUTE_MS;
export const DAY_MS = 24 * HOUR_MS;

/** Milliseconds since 1970, as the tables hold times. */
export const nowOf = (book: Book): number => book.clock().getTime();

/** As answers tell a time: RFC 3339, UTC. */
export const timeText = (ms: number): string => new Date(ms).toISOString();
