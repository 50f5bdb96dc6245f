const ISO =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?)?(?:Z|([+-])(\d{2}):?(\d{2}))?$/;

/**
 * Decimal year of an ISO 8601 date or time, with the true length of the year; without an offset the time counts as UTC.
 *
 * @returns e.g. 2028.5; undefined where the text is not a date of the calendar.
 * Frame: none.
 */
export function decimalYear(iso: string): number | undefined {
  const parts = ISO.exec(iso.trim());
  if (parts === null) return undefined;
  const number = (index: number): number => Number(parts[index] ?? 0);
  const [year, month, day, hour, minute, second] = [1, 2, 3, 4, 5, 6].map(number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (month < 1 || month > 12 || day < 1 || hour > 24 || minute > 59 || second >= 61) return undefined;
  // A day past the end of its month would run over into the next one.
  if (day > daysUntil(year, month + 1) - daysUntil(year, month)) return undefined;
  const offsetMinutes = (parts[7] === "-" ? -1 : 1) * (number(8) * 60 + number(9));
  const days =
    daysUntil(year, month) + day - 1 + hour / 24 + (minute - offsetMinutes) / 1440 + second / 86_400;
  return year + days / daysUntil(year, 13);
}

/** Days from the start of the year to the start of the month; month 13 = the whole year. */
function daysUntil(year: number, month: number): number {
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const lengths = [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return lengths.slice(0, month - 1).reduce((sum, length) => sum + length, 0);
}
