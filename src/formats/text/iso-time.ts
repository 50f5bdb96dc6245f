/** A moment, as milliseconds since 1970 UTC, and whether the text named its zone. */
export interface Moment {
  readonly ms: number;
  readonly zoned: boolean;
}

const ISO =
  /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?\s*(Z|[+-]\d\d:?\d\d)?)?$/i;

/**
 * Reads a date with or without a time of day, ISO 8601: `2026-03-02T07:10:00Z`, `2026-03-02 08:10+01:00`, `2026-03-02`.
 *
 * A day that the calendar does not have is refused. A time without zone is taken as UTC and marked so.
 *
 * @returns undefined when the text is not such a moment.
 */
export function momentOf(text: string): Moment | undefined {
  const parts = ISO.exec(text.trim());
  if (parts === null) return undefined;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const [hour, minute, second] = [Number(parts[4] ?? 0), Number(parts[5] ?? 0), Number(parts[6] ?? 0)];
  const fraction = Number(`0.${parts[7] ?? "0"}`);
  if (hour > 24 || minute > 59 || second > 60 || year < 1900 || year > 2200) return undefined;
  const dayMs = Date.UTC(year, month - 1, day);
  const read = new Date(dayMs);
  if (read.getUTCMonth() !== month - 1 || read.getUTCDate() !== day) return undefined;
  const zone = parts[8];
  const ms = dayMs + ((hour * 60 + minute) * 60 + second) * 1000 + fraction * 1000 - zoneMs(zone);
  return { ms, zoned: zone !== undefined };
}

function zoneMs(zone: string | undefined): number {
  if (zone === undefined || zone.toUpperCase() === "Z") return 0;
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(-2));
  return (zone.startsWith("-") ? -minutes : minutes) * 60_000;
}

/** True for a date without a time of day. */
export const isDateOnly = (text: string): boolean => /^\d{4}-\d\d-\d\d$/.test(text.trim());

/** The moment in the one form that the core stores. */
export const isoOf = (ms: number): string => new Date(ms).toISOString();
