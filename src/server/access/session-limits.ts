import { DAY_MS, HOUR_MS, MINUTE_MS } from "./book.ts";

/** Source: OWASP ASVS 5.0.0, 7.3.1 and 7.3.2, which ask for limits that are written down; the numbers are ours. */

/** A session that is not used for so long ends. */
export const IDLE_MS = 12 * HOUR_MS;
/** A session ends so long after signing in, however much it is used. */
export const ABSOLUTE_MS = 30 * DAY_MS;
/** How long somebody has to show the second factor after the password. */
export const PENDING_MS = 10 * MINUTE_MS;
/** Use is noted at most so often: not every request has to write. */
export const NOTED_EVERY_MS = MINUTE_MS;
