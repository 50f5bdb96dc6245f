const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Gives start times one after the other through working days, from half past seven (UTC). */
export class Diary {
  #next: number;
  readonly #spacingMs: number;
  readonly #lastStartH = 15;

  /** @param firstDay ISO 8601 date, a working day. @param spacingMin minutes from start to start. */
  constructor(firstDay: string, spacingMin: number) {
    this.#next = Date.parse(`${firstDay}T07:30:00Z`);
    this.#spacingMs = spacingMin * 60_000;
  }

  next(): string {
    const start = this.#next;
    this.#next += this.#spacingMs;
    const midnight = Math.floor(this.#next / DAY_MS) * DAY_MS;
    if (this.#next - midnight > this.#lastStartH * HOUR_MS) {
      // 1970-01-01 was a Thursday: day 4 of a week that starts on Sunday
      const weekday = (midnight / DAY_MS + 4) % 7;
      this.#next = midnight + (weekday === 5 ? 3 : 1) * DAY_MS + 7.5 * HOUR_MS;
    }
    return new Date(start).toISOString().replace(".000Z", "Z");
  }
}
