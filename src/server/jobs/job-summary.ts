import { z } from "zod";
import { type Issue, ok, type Result } from "#core";
import { type Entry, foldJob, type JobState } from "#records";
import type { Store } from "#store";

const rangeSchema = z.object({ from: z.number(), to: z.number() });

const briefSchema = z
  .object({
    id: z.string(),
    name: z.string().describe("as the job says it; the id, if it says none"),
    entries: z.number().int().describe("in the log"),
    elements: z.number().int(),
    runs: z.number().int(),
    last: z
      .object({ kind: z.string(), author: z.string(), at: z.string().describe("as the device showed it") })
      .describe("the entry that arrived last"),
    conflicts: z.number().int(),
    isComplete: z.boolean().describe("false while entries are missing, waiting, doubled or unread"),
  })
  .meta({ id: "JobBrief" });

export const jobListSchema = z.object({ jobs: z.array(briefSchema) });

export const jobSummarySchema = briefSchema
  .extend({
    conflictList: z.array(z.object({ thing: z.string(), field: z.string() })),
    unread: z.array(
      z.object({ kind: z.string(), revision: z.number(), code: z.string(), entry: z.string() }),
    ),
    devices: z.array(
      z.object({
        device: z.string(),
        followed: z.number().int().describe("entries that count"),
        highest: z.number().int().describe("highest number held or heard of"),
        missing: z.array(rangeSchema),
        waiting: z.number().int(),
        forks: z.array(z.number()),
      }),
    ),
  })
  .meta({ id: "JobSummary" });

export type JobSummary = z.output<typeof jobSummarySchema>;

/** Summaries of jobs. A job whose log has not grown is not read again. */
export type JobSummaries = (job: string) => Promise<Result<JobSummary | undefined, Issue>>;

export function jobSummaries(store: Store): JobSummaries {
  const known = new Map<string, JobSummary>();
  const running = new Map<string, ReturnType<JobSummaries>>();
  const read: JobSummaries = async (job) => {
    const size = await store.size(job);
    if (!size.ok) return size;
    const before = known.get(job);
    if (before?.entries === size.value) return ok(before);
    const entries = await store.readJob(job);
    if (!entries.ok) return entries;
    const last = entries.value.at(-1);
    if (last === undefined) return ok(undefined);
    const summary = summaryOf(job, entries.value, last, foldJob(entries.value));
    known.set(job, summary);
    return ok(summary);
  };
  // several who ask at once wait for the same work
  return (job) => {
    const begun = running.get(job) ?? read(job).finally(() => running.delete(job));
    running.set(job, begun);
    return begun;
  };
}

function summaryOf(job: string, entries: readonly Entry[], last: Entry, state: JobState): JobSummary {
  const things = Object.keys(state.things);
  const named = state.things["job"]?.fields["name"]?.[0]?.value;
  return {
    id: job,
    name: typeof named === "string" ? named : job,
    entries: entries.length,
    elements: things.filter((thing) => thing.startsWith("element/")).length,
    runs: things.filter((thing) => thing.startsWith("run/")).length,
    last: { kind: last.kind, author: last.author, at: last.clock.wall },
    conflicts: state.conflicts.length,
    isComplete: state.isComplete,
    conflictList: state.conflicts.map(({ thing, field }) => ({ thing, field })),
    unread: state.unread.map(({ kind, revision, code, by }) => ({ kind, revision, code, entry: by.entry })),
    devices: Object.entries(state.devices).map(
      ([device, { followed, highest, missing, waiting, forks }]) => ({
        device,
        followed,
        highest,
        missing: missing.map(({ from, to }) => ({ from, to })),
        waiting,
        forks: [...forks],
      }),
    ),
  };
}

export const briefOf = ({ conflictList: _, unread: __, devices: ___, ...brief }: JobSummary) => brief;
