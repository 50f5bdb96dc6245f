import { z } from "zod";
import { ok, reduceJob } from "#core";
import { writeResultsJson } from "#formats";
import { utf8 } from "#records";
import { sentenceOf, version } from "#text";
import { definedOnly } from "./defined-only.ts";
import { keepResult } from "./keep-result.ts";
import { readLoggedJob } from "./read-logged-job.ts";
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
  run: async (order, options, { store, onProgress }) => {
    const logged = await readLoggedJob(store, order);
    if (!logged.ok) return logged;
    const { job, read } = logged.value;
    const results = reduceJob(job, { ...definedOnly(options), onProgress });
    const text = writeResultsJson(job, read, results, { version, sentence: sentenceOf });
    const about = { name: "results.json", type: "application/json" };
    const kept = await keepResult(store, utf8(text), about);
    return kept.ok ? ok({ ...kept.value, elements: results.elements.length }) : kept;
  },
};
