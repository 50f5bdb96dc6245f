import type { Issue } from "#core";

/** The heading and the lines of a pasted table that have an error of their own: what is left to be mended. */
export function remainingLines(text: string, findings: readonly Issue[]): string {
  const bad = new Set(
    findings.filter(({ severity }) => severity === "error").flatMap(({ place }) => place.line ?? []),
  );
  const lines = text.split(/\r\n|\n|\r/);
  const heading = lines.findIndex((line) => line.trim() !== "");
  const rest = lines.filter((_, i) => i !== heading && bad.has(i + 1));
  return rest.length === 0 ? "" : [lines[heading] ?? "", ...rest].join("\n");
}
