import { z } from "zod";
import { ok } from "#core";
import { createVerifier, rootOfIds, setDigest, verifyLog } from "#records";
import { readLog } from "./read-log.ts";
import type { Task } from "./task.ts";

const input = z.strictObject({});

/** Checks every entry of a job's log, its signature and its chain, and names the first bad one of each device. */
export const checkLogTask: Task<z.output<typeof input>> = {
  name: "check-log",
  description: "Checks every entry of the job's log, its signature and its chain.",
  input,
  run: async ({ job, entries: count }, _input, { store, onProgress }) => {
    const entries = await readLog(store, job, count);
    if (!entries.ok) return entries;
    onProgress(0, entries.value.length);
    const report = await verifyLog(entries.value, job, createVerifier());
    const ids = entries.value.map((entry) => entry.id);
    return ok({
      entries: ids.length,
      sound: report.sound.length,
      devices: report.chains.size,
      findings: report.findings.length,
      first_bad: report.firstBad.map(({ device, sequence, issue }) => ({
        device,
        sequence,
        code: issue.code,
      })),
      digest: await setDigest(ids),
      root: await rootOfIds(ids),
    });
  },
};
