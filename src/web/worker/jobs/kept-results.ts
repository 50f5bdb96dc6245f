import type { ElementResult, RunResult } from "#core";
import { attempt, attemptLater } from "../../attempt.ts";

/** An element worked out, with the fingerprint of what that rests on. */
export interface WorkedElement {
  readonly key: string;
  readonly result: ElementResult;
  readonly runs: readonly RunResult[];
}

/** Results that this browser has worked out before. They can be thrown away at any time: the log gives them again. */
export interface KeptResults {
  read(job: string, elements: readonly string[]): Promise<ReadonlyMap<string, WorkedElement>>;
  keep(job: string, element: string, worked: WorkedElement): void;
}

interface Kept {
  readonly build: string;
  readonly worked: WorkedElement;
}

const DATABASE = "toeline-results";
const TABLE = "results";
const NOTHING_KEPT: KeptResults = { read: async () => new Map(), keep: () => {} };

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("no answer from the browser's store"));
  });

/**
 * Opens the results kept in this browser; where it keeps nothing, everything is worked out each time.
 *
 * @param build names the program: what another build has worked out does not count.
 */
export async function openKeptResults(build: string): Promise<KeptResults> {
  const opened = await attemptLater(() => {
    const opening = indexedDB.open(DATABASE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(TABLE);
    return answerOf(opening);
  });
  if (!opened.ok) return NOTHING_KEPT;
  const table = (mode: IDBTransactionMode) =>
    // relaxed: losing a result costs only the time to work it out again
    opened.value.transaction(TABLE, mode, { durability: "relaxed" }).objectStore(TABLE);
  return {
    read: async (job, elements) => {
      const read = await attemptLater(() => {
        const from = table("readonly");
        return Promise.all(elements.map((element) => answerOf<Kept | undefined>(from.get([job, element]))));
      });
      const found = read.ok ? read.value : [];
      return new Map(
        elements.flatMap((element, i) => {
          const kept = found[i];
          return kept?.build === build ? [[element, kept.worked] as const] : [];
        }),
      );
    },
    keep: (job, element, worked) => {
      attempt(() => table("readwrite").put({ build, worked } satisfies Kept, [job, element]));
    },
  };
}
