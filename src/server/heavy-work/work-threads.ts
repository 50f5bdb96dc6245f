import { MessageChannel } from "node:worker_threads";
import { Piscina } from "piscina";
import { fail, type Issue, type Result } from "#core";
import type { JsonObject } from "#records";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import type { TaskOrder } from "./tasks/task.ts";
import type { RecordsPlace, runInThread, ThreadOrder } from "./work-thread.ts";

/** A thread that is not used any more is ended after so long, milliseconds. */
const IDLE_MS = 30_000;
/** Largest heap of one thread, MB: a job that needs more fails by itself instead of taking the server with it. */
const MAX_HEAP_MB = 2048;

export interface ThreadWork {
  readonly task: string;
  readonly order: TaskOrder;
  readonly input: JsonObject;
  readonly onProgress: (done: number, total: number) => void;
  /** ends the thread that does the work */
  readonly signal: AbortSignal;
}

/** Threads for heavy work: as many orders at once as there are threads. */
export interface WorkThreads {
  /** Errors: work.crashed, if the thread ended before its answer; those of the task. */
  run(work: ThreadWork): Promise<Result<JsonObject, Issue>>;
  close(): Promise<void>;
}

/** @param count at least 1. */
export function openWorkThreads(count: number, place: RecordsPlace): WorkThreads {
  const pool = new Piscina<ThreadOrder, Awaited<ReturnType<typeof runInThread>>>({
    ...threadFile(),
    name: "runInThread",
    minThreads: 0,
    maxThreads: count,
    idleTimeout: IDLE_MS,
    // the store of a thread waits for its database without the thread sleeping for good
    atomics: "disabled",
    resourceLimits: { maxOldGenerationSizeMb: MAX_HEAP_MB },
  });
  return {
    run: async ({ task, order, input, onProgress, signal }) => {
      const { port1, port2 } = new MessageChannel();
      port1.on("message", ([done, total]: readonly [number, number]) => onProgress(done, total));
      const answer = await attempt(() =>
        pool.run({ place, task, order, input, progress: port2 }, { transferList: [port2], signal }),
      );
      port1.close();
      return answer.ok ? answer.value : fail(error("work.crashed", { found: answer.error.slice(0, 200) }));
    },
    close: () => pool.destroy(),
  };
}

/** Bundled, the thread's program lies beside the command line as one file; from the sources it is run as TypeScript. */
function threadFile(): { readonly filename: string; readonly execArgv?: string[] } {
  if (import.meta.url.endsWith(".mjs"))
    return { filename: new URL("./toeline-worker.mjs", import.meta.url).href };
  return {
    filename: new URL("./work-thread.ts", import.meta.url).href,
    execArgv: ["--import", "tsx"],
  };
}
