import { z } from "zod";
import { fail, ok, reduceJob } from "#core";
import { folderFromState } from "#exchange";
import { readJobFolder, writeResultsJson } from "#formats";
import { foldJob, utf8 } from "#records";
import { sentenceOf } from "#text";
import { error } from "../../issue.ts";
import { version } from "../../version.ts";
import { keepBlob } from "./keep-blob.ts";
import { readLog } from "./read-log.ts";
import type { Task } from "./task.ts";

/** More would keep a thread for hours. */
const MAX_TRIALS = 1_000_000;
const MAX_SEED = 2 ** 31;

const input = z.strictObject({
  trials: z.union([z.literal("auto"), z.number().int().min(1).max(MAX_TRIALS)]).optional(),
  seed: z.number().int().min(0).max(MAX_SEED).optional(),
  only: z.array(z.string().min(1).max(200)).min(1).max(10_000).optional(),
  method: z.enum(["minimum-curvature", "balanced-tangential"]).optional(),
});

/** Works a job out as its log says it is: the same results.json that its job folder gives. */
export const resultsTask: Task<z.output<typeof input>> = {
  name: "results",
  description: "Works the whole job out, with trials if asked for; the result is its results.json.",
  input,
  run: async ({ job, entries: count }, options, { store, onProgress }) => {
    const entries = await readLog(store, job, count);
    if (!entries.ok) return entries;
    const readBlob = async (blob: string) => {
      const bytes = await store.readBlob(blob);
      return bytes.ok ? bytes.value : undefined;
    };
    const { folder, findings } = await folderFromState(foldJob(entries.value), entries.value, readBlob);
    const read = await readJobFolder(folder, () => {});
    if (read.job === undefined) {
      const first = [...findings, ...read.findings].find(({ severity }) => severity === "error");
      return fail(error("work.job", { found: first === undefined ? "" : sentenceOf(first) }));
    }
    const results = reduceJob(read.job, { ...definedOnly(options), onProgress });
    const text = writeResultsJson(read.job, read, results, { version, sentence: sentenceOf });
    const bytes = utf8(text);
    const blob = await keepBlob(store, bytes);
    if (!blob.ok) return blob;
    const about = { name: "results.json", type: "application/json" };
    return ok({ blob: blob.value, bytes: bytes.length, ...about, elements: results.elements.length });
  },
};

/** Without the keys that were left out: undefined is a value of its own to the compiler. */
const definedOnly = <T extends object>(options: T) =>
  Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
