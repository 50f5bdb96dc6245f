import type { FastifyReply } from "fastify";
import { z } from "zod";
import { type Issue, ok, type Result } from "#core";
import { consistencyProof, inclusionProof, leafHash, type TreeHead } from "#records";
import type { AppInstance } from "../app-instance.ts";
import { costly } from "../frame/rate-limits.ts";
import { error } from "../issue.ts";
import type { Office } from "../office.ts";
import { problem } from "../problem.ts";
import { storeProblem } from "../sync/store-problem.ts";
import { evidenceZip, jobFolderZip } from "./job-files.ts";
import { briefOf, jobListSchema, jobSummaries, jobSummarySchema } from "./job-summary.ts";
import { resultsRoutes } from "./results-routes.ts";
import { type TreeHeads, treeHeads } from "./tree-heads.ts";

const params = z.object({ job: z.string().min(1).max(100) });
const hash = z.string().regex(/^[0-9a-f]{64}$/, "64 lower-case hexadecimal digits");
const tags = ["jobs"];

const headSchema = z
  .object({
    format: z.literal("toeline-head/1"),
    job: z.string(),
    size: z.number().int(),
    root: hash,
    at: z.string(),
    key: hash,
    signature: z.string(),
  })
  .meta({ id: "TreeHead" });

/** Jobs, what is in them, and the proofs that nothing in them was changed. */
export async function jobRoutes(app: AppInstance, office: Office): Promise<void> {
  const heads = treeHeads(office);
  summaryRoutes(app, office);
  headRoutes(app, office, heads);
  fileRoutes(app, office, heads);
  await resultsRoutes(app, office);
}

function summaryRoutes(app: AppInstance, { access, store }: Office): void {
  const summaries = jobSummaries(store);
  app.get(
    "/api/1/jobs",
    {
      onRequest: access.signedIn,
      schema: { summary: "Jobs that whoever asks may read", tags, response: { 200: jobListSchema } },
    },
    async (request, reply) => {
      const person = access.personOf(request);
      const all = await store.jobs();
      if (!all.ok) return storeProblem(reply, all.error);
      const readable = person === undefined ? [] : await access.readable(person, all.value);
      const jobs = [];
      for (const job of readable) {
        const summary = await summaries(job);
        if (!summary.ok) return storeProblem(reply, summary.error);
        if (summary.value !== undefined) jobs.push(briefOf(summary.value));
      }
      return { jobs };
    },
  );
  app.get(
    "/api/1/jobs/:job",
    {
      onRequest: access.needs("read"),
      schema: { summary: "What a job holds", tags, params, response: { 200: jobSummarySchema } },
    },
    async ({ params: { job } }, reply) => {
      const summary = await summaries(job);
      return summary.ok && summary.value !== undefined ? summary.value : nothing(reply, summary);
    },
  );
}

function headRoutes(app: AppInstance, { access, store }: Office, heads: TreeHeads): void {
  const read = access.needs("read");
  const described = (summary: string) => ({ summary, tags, params });
  app.get(
    "/api/1/jobs/:job/head",
    {
      onRequest: read,
      schema: {
        ...described("Signed head of the job's tree, over all entries"),
        response: { 200: headSchema },
      },
    },
    async ({ params: { job } }, reply) => {
      const head = await heads.head(job);
      return head.ok && head.value !== undefined ? head.value : nothing(reply, head);
    },
  );
  const proof = z.array(hash).describe("RFC 6962, section 2.1; from the leaf upwards");
  app.get(
    "/api/1/jobs/:job/proof/inclusion",
    {
      onRequest: read,
      config: { rateLimit: costly },
      schema: {
        ...described("Shows that an entry is in the tree of the head given with it"),
        querystring: z.object({ entry: hash }),
        response: { 200: z.object({ head: headSchema, index: z.number().int(), proof }) },
      },
    },
    async ({ params: { job }, query: { entry } }, reply) => {
      const tree = await signedTree(store, heads, job);
      if (!tree.ok || tree.value === undefined) return nothing(reply, tree);
      const index = tree.value.ids.indexOf(entry);
      if (index < 0) return problem(reply, 404, error("server.not-found"));
      return {
        head: tree.value.head,
        index,
        proof: [...(await inclusionProof(await leaves(tree.value.ids), index))],
      };
    },
  );
  app.get(
    "/api/1/jobs/:job/proof/consistency",
    {
      onRequest: read,
      config: { rateLimit: costly },
      schema: {
        ...described("Shows that an older tree is the beginning of the one of the head given with it"),
        querystring: z.object({ from: z.coerce.number().int().min(1).describe("size of the older tree") }),
        response: { 200: z.object({ head: headSchema, proof }) },
      },
    },
    async ({ params: { job }, query: { from } }, reply) => {
      const tree = await signedTree(store, heads, job);
      if (!tree.ok || tree.value === undefined) return nothing(reply, tree);
      const { head, ids } = tree.value;
      if (from > ids.length)
        return problem(
          reply,
          400,
          error("server.no-such-size", { found: from, expected: ids.length }, "query.from"),
        );
      return { head, proof: [...(await consistencyProof(await leaves(ids), from))] };
    },
  );
}

const leaves = (ids: readonly string[]): Promise<readonly string[]> => Promise.all(ids.map(leafHash));

interface SignedTree {
  readonly head: TreeHead;
  readonly ids: readonly string[];
}

async function signedTree(
  store: Office["store"],
  heads: TreeHeads,
  job: string,
): Promise<Result<SignedTree | undefined, Issue>> {
  const head = await heads.head(job);
  if (!head.ok) return head;
  if (head.value === undefined) return ok(undefined);
  const ids = await store.readIds(job);
  return ids.ok ? ok({ head: head.value, ids: ids.value.slice(0, head.value.size) }) : ids;
}

/** Where there is nothing to give: the store failed, or there is no such job. */
const nothing = (reply: FastifyReply, outcome: Result<unknown, Issue>): FastifyReply =>
  outcome.ok ? problem(reply, 404, error("server.not-found")) : storeProblem(reply, outcome.error);

function fileRoutes(app: AppInstance, { access, store }: Office, heads: TreeHeads): void {
  const archive = (
    ending: string,
    summary: string,
    make: (job: string) => Promise<Result<Uint8Array | undefined, Issue>>,
  ) =>
    app.get(
      `/api/1/jobs/:job/${ending}`,
      { onRequest: access.needs("read"), config: { rateLimit: costly }, schema: { summary, tags, params } },
      async ({ params: { job } }, reply) => {
        const made = await make(job);
        if (!made.ok || made.value === undefined) return nothing(reply, made);
        return reply
          .type("application/zip")
          .header("content-disposition", `attachment; filename="${fileName(job)}-${ending}"`)
          .send(Buffer.from(made.value));
      },
    );
  archive("folder.zip", "The job as a job folder", (job) => jobFolderZip(store, job));
  archive("evidence.zip", "Everything of the job in one file that anybody can check", (job) =>
    evidenceZip(store, heads, job),
  );
}

/** A job's id as a file name that no system takes for something else. */
const fileName = (job: string): string => job.replaceAll(/[^A-Za-z0-9_-]+/g, "-").slice(0, 60);
