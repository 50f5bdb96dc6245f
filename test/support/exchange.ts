import { appendStatements, type FolderStatements, folderFromState, statementsFromJobFolder } from "#exchange";
import type { FolderReader } from "#formats";
import { type Entry, foldJob, positionIn, type Statement, walkChains } from "#records";
import { clockAt, JOB, signerOf, unwrap } from "./records.ts";

/** A job in the log, as far as a test needs it. */
export interface LoggedJob {
  readonly entries: readonly Entry[];
  readonly blobs: ReadonlyMap<string, Uint8Array>;
}

export const EMPTY_LOG: LoggedJob = { entries: [], blobs: new Map() };

/** Writes statements as further entries of a device. @param device number of its key. */
export async function writeStatements(
  { entries, blobs }: LoggedJob,
  statements: readonly Statement[],
  device = 1,
): Promise<LoggedJob> {
  const signer = await signerOf(device);
  const chains = walkChains(entries);
  const position = positionIn(chains, JOB, signer.publicKey);
  const announcement = {
    author: "anna",
    kind: "device",
    body: { public_key: signer.publicKey, name: `Office ${device}` },
  };
  const held = [...entries];
  let seconds = 0;
  const pen = { position, signer, clock: () => clockAt(seconds++) };
  const all = position.last === undefined ? [announcement, ...statements] : statements;
  unwrap(
    await appendStatements(all, pen, async (batch) => {
      held.push(...batch);
      return { ok: true, value: true };
    }),
  );
  return { entries: held, blobs };
}

/** Takes a folder over into a log. @returns the log after it, and what was new. */
export async function importFolder(
  folder: FolderReader,
  log: LoggedJob = EMPTY_LOG,
  device = 1,
): Promise<LoggedJob & Pick<FolderStatements, "statements" | "findings">> {
  const state = foldJob(log.entries);
  const { statements, findings, blobs } = unwrap(
    await statementsFromJobFolder(folder, { author: "anna", state }),
  );
  const after = await writeStatements(log, statements, device);
  return { ...after, blobs: new Map([...log.blobs, ...blobs]), statements, findings };
}

/** The job of a log as a folder. */
export const exportFolder = ({ entries, blobs }: LoggedJob) =>
  folderFromState(foldJob(entries), entries, async (blob) => blobs.get(blob));
