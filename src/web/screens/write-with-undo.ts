import type { Issue } from "#core";
import { sentenceOf } from "#text";
import { tell } from "../components/toast.tsx";
import { preferences } from "../preferences/preferences.ts";
import type { NewStatement } from "../worker/desk.ts";
import { desk } from "../worker/desk-client.ts";

/**
 * Writes, and says so with a way back; also says why nothing was written, of the way back too.
 *
 * @param undo empty: there is no way back.
 * @returns what went wrong; empty when it is saved.
 */
export async function writeWithUndo(
  job: string,
  statements: readonly NewStatement[],
  undo: readonly NewStatement[],
  text: string,
): Promise<readonly Issue[]> {
  if (statements.length === 0) return [];
  const trouble = await write(job, statements);
  if (trouble.length === 0) tell(undo.length === 0 ? { text } : { text, undo: () => void write(job, undo) });
  return trouble;
}

async function write(job: string, statements: readonly NewStatement[]): Promise<readonly Issue[]> {
  const written = await desk().write(job, statements);
  if (written.ok) return [];
  const { language } = preferences();
  // after the toast of a way back has closed itself
  setTimeout(() => tell({ text: written.error.map((issue) => sentenceOf(issue, language)).join(" ") }));
  return written.error;
}
