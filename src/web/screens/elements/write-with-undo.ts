import type { Issue } from "#core";
import { tell } from "../../components/toast.tsx";
import type { NewStatement } from "../../worker/desk.ts";
import { desk } from "../../worker/desk-client.ts";

/** Writes, and says so with a way back. @returns what went wrong; empty when it is saved. */
export async function writeWithUndo(
  job: string,
  statements: readonly NewStatement[],
  undo: readonly NewStatement[],
  text: string,
): Promise<readonly Issue[]> {
  if (statements.length === 0) return [];
  const written = await desk().write(job, statements);
  if (!written.ok) return written.error;
  tell({ text, undo: () => void desk().write(job, undo) });
  return [];
}
