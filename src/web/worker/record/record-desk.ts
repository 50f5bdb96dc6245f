import { verifyEvidenceBag } from "#evidence";
import type { DeskRecord } from "../desk-record.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { conflictCards } from "./conflict-cards.ts";
import type { ReadBlob } from "./conflict-effects.ts";
import { jobDevices } from "./job-devices.ts";
import { askOffice } from "./office-answers.ts";
import { overview } from "./overview.ts";
import { entryProof } from "./proof.ts";
import { timeline } from "./timeline.ts";

/** What the record needs of the desk. */
export interface RecordPlace {
  readonly now: (job: string) => Promise<JobNow | undefined>;
  readonly readBlob: ReadBlob;
  /** public key of this device; undefined before it has written anything */
  readonly device: () => Promise<string | undefined>;
}

/** The worker's part of history, conflicts, overview, devices and the check of a file. */
export function recordDesk({ now, readBlob, device }: RecordPlace): DeskRecord {
  const ask = async <T>(job: string, answer: (known: JobNow) => T | Promise<T>): Promise<T | undefined> => {
    const known = await now(job);
    return known === undefined ? undefined : answer(known);
  };
  return {
    timeline: (job, filter, from, count, language) =>
      ask(job, ({ log }) => timeline(log, filter, from, count, language)),
    proof: (job, entry) => ask(job, ({ log }) => entryProof(log, job, entry)),
    evidence: (job) => askOffice(`/api/1/jobs/${encodeURIComponent(job)}/evidence.zip`),
    conflicts: (job, language) => ask(job, (known) => conflictCards(known, language, readBlob)),
    overview: (job) => ask(job, overview),
    devices: (job) => ask(job, async ({ log }) => jobDevices(log, await device())),
    checkFile: (bytes, { head, officeKey }) =>
      verifyEvidenceBag(bytes, {
        ...(head === undefined ? {} : { knownHeads: [head] }),
        ...(officeKey === undefined ? {} : { knownOfficeKey: officeKey }),
      }),
  };
}
