import { randomUUID } from "node:crypto";
import { type Issue, ok, type Result } from "#core";
import { openNotices } from "#store";
import type { Office } from "../office.ts";

const CHANNEL = "toeline_growth";

/** Tells listeners that the log of a job has grown, on all processes of the office. */
export interface Growth extends Pick<Office, "announce" | "onGrowth"> {
  close(): Promise<void>;
}

/**
 * With SQLite there is one process, and it tells itself; with PostgreSQL the database passes it on. What is not heard while a
 * connection is lost is made up for: clients ask by themselves from time to time.
 */
export async function openGrowth(database: string | undefined): Promise<Result<Growth, Issue>> {
  const listeners = new Set<(job: string) => void>();
  const tellHere = (job: string) => {
    for (const listener of listeners) listener(job);
  };
  const onGrowth = (listener: (job: string) => void) => {
    listeners.add(listener);
    return () => void listeners.delete(listener);
  };
  if (database === undefined)
    return ok({ announce: tellHere, onGrowth, close: async () => listeners.clear() });
  // one's own message comes back from the database, where it was told already
  const me = randomUUID();
  const notices = await openNotices(database, CHANNEL, (text) => {
    const [from, job] = split(text);
    if (from !== me && job !== "") tellHere(job);
  });
  if (!notices.ok) return notices;
  const announce = (job: string) => {
    tellHere(job);
    notices.value.tell(`${me} ${job}`);
  };
  const close = async () => {
    listeners.clear();
    await notices.value.close();
  };
  return ok({ announce, onGrowth, close });
}

function split(text: string): readonly [string, string] {
  const space = text.indexOf(" ");
  return space < 0 ? [text, ""] : [text.slice(0, space), text.slice(space + 1)];
}
