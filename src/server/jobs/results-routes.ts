import { z } from "zod";
import type { AppInstance } from "../app-instance.ts";
import { requestForJob } from "../heavy-work/request-for-job.ts";
import { error } from "../issue.ts";
import type { Office } from "../office.ts";
import { problem } from "../problem.ts";
import { storeProblem } from "../sync/store-problem.ts";

const params = z.object({ job: z.string().min(1).max(100) });
const begunSchema = z.object({
  work: z.string().describe("its id among the job's work"),
  state: z.enum(["waiting", "running", "cancelled"]),
});

/** Seconds after which it makes sense to ask again. */
const ASK_AGAIN_S = 2;

/** What was worked out from a job as its log stands now. The first who asks has it worked out; everybody gets the same. */
export async function resultsRoutes(app: AppInstance, office: Office): Promise<void> {
  const { access, store, work } = office;
  app.get(
    "/api/1/jobs/:job/results",
    {
      onRequest: access.needs("read"),
      schema: {
        summary: "results.json of the job as it stands now; 202 while it is being worked out",
        tags: ["jobs"],
        params,
        response: { 200: z.any().describe("results.json, see its own schema"), 202: begunSchema },
      },
    },
    async (request, reply) => {
      const { job } = request.params;
      const size = await store.size(job);
      if (!size.ok) return storeProblem(reply, size.error);
      if (size.value === 0) return problem(reply, 404, error("server.not-found"));
      const requestedBy = access.personOf(request)?.id ?? "";
      const order = await requestForJob(office, { task: "results", job, input: {}, requestedBy });
      if (!order.ok) return storeProblem(reply, order.error);
      const asked = await work.request(order.value);
      if (!asked.ok) return problem(reply, asked.error.code === "work.queue-full" ? 429 : 503, asked.error);
      const { id, progress } = asked.value;
      if (progress.state === "failed") return problem(reply, 422, progress.issue);
      if (progress.state !== "finished")
        return reply.code(202).header("retry-after", ASK_AGAIN_S).send({ work: id, state: progress.state });
      const { blob } = progress.result;
      const bytes = await store.readBlob(String(blob));
      if (!bytes.ok) return storeProblem(reply, bytes.error);
      if (bytes.value === undefined) return problem(reply, 404, error("server.not-found"));
      return reply.type("application/json; charset=utf-8").send(Buffer.from(bytes.value));
    },
  );
}
