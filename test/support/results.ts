import type { Issue, Result } from "#core";

/** The value of a result that must be good; the findings as the message where it is not. */
export function valueFrom<T>(result: Result<T, readonly Issue[]>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** The codes of a result that must be bad. */
export function codesOf<T>(result: Result<T, readonly Issue[]>): string[] {
  if (result.ok) throw new Error("expected findings, got a value");
  return result.error.map((issue) => issue.code);
}
