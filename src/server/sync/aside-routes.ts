import { z } from "zod";
import { type Issue, ok, type Result } from "#core";
import { type Entry, parseJson, receiveBatch } from "#records";
import type { KeptAside } from "#store";
import { sentenceOf } from "#text";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { problem } from "../problem.ts";
import { judgeFor } from "./judge-entries.ts";
import { jobParameter } from "./parameters.ts";
import { storeProblem } from "./store-problem.ts";
import type { SyncParts } from "./sync-parts.ts";

const PAGE = 100;

const asideSchema = z.object({
  key: z.string().describe("names it for taking it after all"),
  code: z.string(),
  reason: z.string().describe("a sentence for people, in English"),
  at: z.string().describe("when it came"),
  text: z.string().describe("what came, as JSON"),
  state: z.enum(["aside", "taken"]).describe("taken: the log holds it by now"),
});

/** What was not taken into a job's log: to be looked at, and to be taken after all by somebody with the right. */
export function asideRoutes(app: AppInstance, parts: SyncParts): void {
  const { access, store } = parts.office;
  app.get(
    "/api/1/jobs/:job/aside",
    {
      schema: {
        summary: "What was kept aside",
        description: "Things that were sent and not taken into the log, as they came, with the reason.",
        tags: ["sync"],
        params: jobParameter,
        querystring: z.object({ after: z.string().max(64).default("").describe("key to go on after") }),
        response: { 200: z.object({ aside: z.array(asideSchema), more: z.boolean() }) },
      },
      onRequest: access.needs("read"),
    },
    async (request, reply) => {
      const { job } = request.params;
      const kept = await store.readKeptAside(job);
      if (!kept.ok) return storeProblem(reply, kept.error);
      const rest = kept.value.filter(({ key }) => key > request.query.after);
      const aside = [];
      for (const one of rest.slice(0, PAGE)) {
        const taken = await isTaken(parts, job, one);
        if (!taken.ok) return storeProblem(reply, taken.error);
        aside.push(written(one, taken.value));
      }
      reply.header("cache-control", "no-store");
      return { aside, more: rest.length > PAGE };
    },
  );
  app.post(
    "/api/1/jobs/:job/aside/:key/take",
    {
      schema: {
        summary: "Take something that was kept aside",
        description:
          "Only an entry that is sound by itself, by somebody who has the right that its kind asks for.",
        tags: ["sync"],
        params: jobParameter.extend({ key: z.string().max(64) }),
        response: { 200: z.object({ entry: z.string().describe("id of the entry that the log now holds") }) },
      },
      onRequest: access.needs("read"),
    },
    async (request, reply) => {
      const { job, key } = request.params;
      const kept = await store.readKeptAside(job);
      if (!kept.ok) return storeProblem(reply, kept.error);
      const one = kept.value.find((aside) => aside.key === key);
      if (one === undefined) return problem(reply, 404, error("sync.aside-unknown"));
      const [entry] = (await receiveBatch(job, [rawOf(one)], parts.verifier)).sound;
      if (entry === undefined) return problem(reply, 409, error("sync.aside-not-sound"));
      const person = access.personOf(request);
      const refusal = person && (await judgeFor(access, person, job)(entry));
      if (refusal !== undefined) return problem(reply, 403, refusal);
      const appended = await store.append(job, [entry], parts.office.clock().toISOString());
      if (!appended.ok) return storeProblem(reply, appended.error);
      if (appended.value.held.length === 0) return problem(reply, 409, error("sync.aside-not-sound"));
      if (appended.value.added > 0) parts.office.announce(job);
      return { entry: entry.id };
    },
  );
}

const written = ({ key, issue, text, at }: KeptAside, taken: boolean) => ({
  key,
  code: issue.code,
  reason: sentenceOf(issue),
  at,
  text,
  state: taken ? ("taken" as const) : ("aside" as const),
});

function rawOf({ text }: KeptAside): unknown {
  const parsed = parseJson(text);
  return parsed.ok ? parsed.value : undefined;
}

async function isTaken(
  { office }: SyncParts,
  job: string,
  aside: KeptAside,
): Promise<Result<boolean, Issue>> {
  const { id, device, sequence } = (rawOf(aside) ?? {}) as Partial<Entry>;
  if (typeof device !== "string" || typeof sequence !== "number") return ok(false);
  const read = await office.store.readChain(job, device, sequence, sequence);
  return read.ok ? ok(read.value.some((entry) => entry.id === id)) : read;
}
