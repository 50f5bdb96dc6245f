const LONGEST = 60;

/** What was found, short enough to be shown in a sentence: one line, at most 60 characters. */
export function excerpt(found: unknown): string {
  const text = typeof found === "string" ? found : (JSON.stringify(found) ?? String(found));
  const line = text
    .slice(0, 4 * LONGEST)
    .replaceAll(/\s+/g, " ")
    .trim();
  return line.length <= LONGEST ? line : `${line.slice(0, LONGEST)}…`;
}
