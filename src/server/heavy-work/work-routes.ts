import { z } from "zod";
import type { JsonObject } from "#records";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { treeHeads } from "../jobs/tree-heads.ts";
import type { Office } from "../office.ts";
import { problem } from "../problem.ts";
import { storeProblem } from "../sync/store-problem.ts";
import { requestForJob } from "./request-for-job.ts";
import { tasks } from "./tasks/registry.ts";
import type { Work } from "./work-queue.ts";

const job = z.string().min(1).max(100);
const jobParams = z.object({ job });
const workParams = z.object({ job, work: z.string().min(1).max(100) });

const names = tasks.map((task) => task.name) as [string, ...string[]];
const bodySchema = z.strictObject({
  task: z.enum(names).describe(tasks.map(({ name, description }) => `${name}: ${description}`).join(" ")),
  // the queue checks the input itself, and names the field that is wrong
  input: z
    .record(z.string(), z.unknown())
    .default({})
    .meta({ description: "of the task of that title", anyOf: tasks.map(({ inputSchema }) => inputSchema) }),
});

const workSchema = z
  .object({
    id: z.string(),
    task: z.string(),
    job: z.string(),
    requested_by: z.string(),
    requested_at: z.string(),
    attempts: z.number().int().describe("more than one if a worker was lost"),
    state: z.enum(["waiting", "running", "finished", "failed", "cancelled"]),
    done: z.number().int().optional().describe("of `total`, while it runs"),
    total: z.number().int().optional(),
    result: z.record(z.string(), z.unknown()).optional().describe("of a finished one"),
    issue: z.record(z.string(), z.unknown()).optional().describe("why it failed"),
  })
  .meta({ id: "Work" });

type WorkAnswer = z.output<typeof workSchema>;

function answerOf({ id, task, job, requestedBy, requestedAt, attempts, progress }: Work): WorkAnswer {
  // the state and what belongs to it stand side by side
  const more = progress as unknown as Pick<WorkAnswer, "state" | "done" | "total" | "result" | "issue">;
  return { id, task, job, requested_by: requestedBy, requested_at: requestedAt, attempts, ...more };
}

/** Asking for heavy work, looking how far it is, and fetching what came of it. */
export async function workRoutes(app: AppInstance, office: Office): Promise<void> {
  const heads = treeHeads(office);
  const mayRead = office.access.needs("read");

  app.post(
    "/api/1/jobs/:job/heavy-work",
    {
      schema: {
        summary: "Ask for heavy work on a job; the same request before the log has grown is the same work",
        params: jobParams,
        body: bodySchema,
        response: { 202: workSchema },
      },
      onRequest: mayRead,
    },
    async (request, reply) => {
      const { task, input } = request.body;
      const requestedBy = office.access.personOf(request)?.id ?? "";
      const { job } = request.params;
      const head = await heads.head(job);
      if (!head.ok) return storeProblem(reply, head.error);
      const order = { task, job, input: input as JsonObject, requestedBy };
      const asked = await requestForJob(office, order, head.value);
      if (!asked.ok) return problem(reply, 503, asked.error);
      const work = await office.work.request(asked.value);
      if (work.ok) return reply.code(202).send(answerOf(work.value));
      const status = STATUS_OF[work.error.code] ?? 503;
      if (status === 429) reply.header("retry-after", "30");
      return problem(reply, status, work.error);
    },
  );

  app.get(
    "/api/1/jobs/:job/heavy-work",
    {
      schema: {
        summary: "All heavy work on a job, oldest first",
        params: jobParams,
        response: { 200: z.array(workSchema) },
      },
      onRequest: mayRead,
    },
    async (request, reply) => {
      const all = await office.work.ofJob(request.params.job);
      return all.ok ? all.value.map(answerOf) : problem(reply, 503, all.error);
    },
  );

  app.get(
    "/api/1/jobs/:job/heavy-work/:work",
    {
      schema: { summary: "How far a piece of work is", params: workParams, response: { 200: workSchema } },
      onRequest: mayRead,
    },
    async (request, reply) => {
      const work = await findIn(office, request.params);
      return "answer" in work ? answerOf(work.answer) : problem(reply, work.status, work.issue);
    },
  );

  app.post(
    "/api/1/jobs/:job/heavy-work/:work/cancel",
    {
      schema: {
        summary:
          "Give up a piece of work that waits or runs; one's own, or any with the right to manage the job",
        params: workParams,
        response: { 200: workSchema },
      },
      onRequest: mayRead,
    },
    async (request, reply) => {
      const work = await findIn(office, request.params);
      if (!("answer" in work)) return problem(reply, work.status, work.issue);
      const person = office.access.personOf(request);
      const isOwn = person?.id === work.answer.requestedBy;
      const may =
        isOwn || (person !== undefined && (await office.access.mayIn(person, work.answer.job, "manage")));
      if (!may) return problem(reply, 403, error("work.not-yours"));
      const cancelled = await office.work.cancel(work.answer.id);
      if (!cancelled.ok) return problem(reply, 503, cancelled.error);
      return answerOf(cancelled.value ?? work.answer);
    },
  );

  app.get(
    "/api/1/jobs/:job/heavy-work/:work/result",
    {
      schema: { summary: "The file that a finished piece of work made", params: workParams },
      onRequest: mayRead,
    },
    async (request, reply) => {
      const work = await findIn(office, request.params);
      if (!("answer" in work)) return problem(reply, work.status, work.issue);
      const { progress } = work.answer;
      const blob = progress.state === "finished" ? progress.result["blob"] : undefined;
      if (progress.state !== "finished" || typeof blob !== "string")
        return problem(reply, 409, error("work.no-file", { found: progress.state }));
      const bytes = await office.store.readBlob(blob);
      if (!bytes.ok) return problem(reply, 503, bytes.error);
      if (bytes.value === undefined) return problem(reply, 404, error("work.no-file", { found: "gone" }));
      const { name, type } = progress.result;
      return reply
        .header("content-disposition", `attachment; filename="${plainName(name)}"`)
        .header("x-content-type-options", "nosniff")
        .header("cache-control", "private, no-cache")
        .type(typeof type === "string" ? type : "application/octet-stream")
        .send(Buffer.from(bytes.value));
    },
  );
}

const STATUS_OF: Readonly<Record<string, number>> = {
  "work.unknown-task": 400,
  "work.input": 400,
  "work.queue-full": 429,
};

/** Work of another job is not told from work that does not exist. */
async function findIn(office: Office, { job, work: id }: { readonly job: string; readonly work: string }) {
  const work = await office.work.find(id);
  if (!work.ok) return { status: 503, issue: work.error };
  if (work.value?.job !== job) return { status: 404, issue: error("work.unknown") };
  return { answer: work.value };
}

const plainName = (name: unknown): string =>
  typeof name === "string" ? name.replaceAll(/[^\w.-]/g, "_") : "result";
