import type { FastifyReply, FastifyRequest } from "fastify";
import { validatorCompiler } from "fastify-type-provider-zod";
import { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import {
  answerPull,
  MAX_BATCH_BYTES,
  messageSchemas,
  type PushRequest,
  parseJson,
  readMessage,
  type SyncMessage,
  writeMessage,
} from "#records";
import { greetingSchema, TOO_OLD } from "#sync";
import type { Person } from "../access/person.ts";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { problem } from "../problem.ts";
import { jobParameter } from "./parameters.ts";
import { receivePush } from "./receive-push.ts";
import { storeProblem } from "./store-problem.ts";
import type { SyncParts } from "./sync-parts.ts";

const PUSH = "toeline-push/1";
const PULL = "toeline-pull/1";
/** What surrounds the entries of a message, and the escapes that another program may write them with. */
const PUSH_BODY_BYTES = 2 * MAX_BATCH_BYTES;

/** A message is read by its own reader, not by the frame's: it counts as it was written. */
const bodyAsItCame: typeof validatorCompiler = (route) =>
  route.httpPart === "body" ? (value: unknown) => ({ value }) : validatorCompiler(route);

/** Who the office is; sending a batch; fetching a page. */
export function messageRoutes(app: AppInstance, parts: SyncParts): void {
  const { office } = parts;
  const { access } = office;
  app.removeContentTypeParser("application/json");
  app.addContentTypeParser("application/json", { parseAs: "string" }, (_request, body, done) =>
    done(null, body),
  );
  app.setValidatorCompiler(bodyAsItCame);
  app.get(
    "/api/1/office",
    {
      schema: {
        summary: "Who this office is and what it understands",
        description:
          "The first thing a device asks. `era` is raised when the office is restored from a back-up.",
        tags: ["sync"],
        response: { 200: greetingSchema },
      },
      onRequest: access.signedIn,
    },
    async (_request, reply) => {
      reply.header("cache-control", "no-store");
      return {
        format: "toeline-office/1" as const,
        office: office.id,
        era: office.era,
        time: office.clock().toISOString(),
        program: "toeline",
        takes: [PUSH, PULL],
      };
    },
  );
  app.post(
    "/api/1/jobs/:job/push",
    {
      schema: {
        summary: "Send entries",
        description:
          "A message toeline-push/1. It is written in one transaction before the answer; `held` names what is safe. Each entry is judged by itself.",
        tags: ["sync"],
        params: jobParameter,
        body: messageSchemas[PUSH],
        response: { 200: messageSchemas["toeline-push-answer/1"] },
      },
      bodyLimit: PUSH_BODY_BYTES,
      onRequest: access.signedIn,
    },
    async (request, reply) => {
      const { job } = request.params;
      const message = readPush(String(request.body), job);
      if (!message.ok) return problem(reply, 400, message.error);
      const person = await sender(parts, request, job);
      if (!person.ok) return problem(reply, 404, person.error);
      const answer = await receivePush(parts, person.value, message.value);
      return answer.ok ? sendMessage(reply, answer.value) : storeProblem(reply, answer.error);
    },
  );
  app.get(
    "/api/1/jobs/:job/pull",
    {
      schema: {
        summary: "Fetch entries in the office's order of arrival",
        description: "Answers with a message toeline-pull-answer/1: the page after a place.",
        tags: ["sync"],
        params: jobParameter,
        querystring: z.object({
          format: z.string().max(100).default(PULL).describe("of the message that is asked with"),
          after: z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER).describe("place, 0 at first"),
          digest: z.enum(["yes", "no"]).default("yes").describe("no: the digest of all ids is not needed"),
        }),
        response: { 200: messageSchemas["toeline-pull-answer/1"] },
      },
      onRequest: access.needs("read"),
    },
    async (request, reply) => {
      const { job } = request.params;
      const { format, after, digest } = request.query;
      if (format !== PULL) return problem(reply, 400, tooOld(format, PULL));
      const page = await office.store.readAfter(job, after);
      if (!page.ok) return storeProblem(reply, page.error);
      const { from, entries, more } = page.value;
      const isLast = digest === "yes" && !more;
      const all = isLast ? await parts.digests.upTo(job, from + entries.length) : ok(undefined);
      if (!all.ok) return storeProblem(reply, all.error);
      const answer = answerPull({ job, era: office.era }, page.value, all.value ?? "");
      return sendMessage(reply, { ...answer, digest: all.value ?? null });
    },
  );
}

/** A job that is not at the office yet belongs to whoever brings it, if that person may begin jobs. */
async function sender(
  { office: { access, store } }: SyncParts,
  request: FastifyRequest,
  job: string,
): Promise<Result<Person, Issue>> {
  const person = access.personOf(request);
  const unknown = fail(error("sync.no-such-job", { job }));
  if (person === undefined) return unknown;
  if (await access.mayIn(person, job, "read")) return ok(person);
  const size = await store.size(job);
  const isNew = size.ok && size.value === 0;
  return isNew && (await access.begin(person, job)) ? ok(person) : unknown;
}

function readPush(text: string, job: string): Result<PushRequest, Issue> {
  const message = readMessage(text, PUSH);
  if (!message.ok) {
    const parsed = parseJson(text);
    const format = parsed.ok ? (parsed.value as { readonly format?: unknown } | null)?.format : undefined;
    return typeof format === "string" && format !== PUSH ? fail(tooOld(format, PUSH)) : message;
  }
  return message.value.job === job ? message : fail(error("records.other-job", { found: message.value.job }));
}

const tooOld = (found: string, expected: string): Issue =>
  error(TOO_OLD, { found: found.slice(0, 100), expected });

/** Written as text: what is hashed and signed must not be written anew by a serializer. */
function sendMessage(reply: FastifyReply, message: SyncMessage): FastifyReply {
  const written = writeMessage(message);
  if (!written.ok) return problem(reply, 500, written.error);
  return reply
    .header("cache-control", "no-store")
    .type("application/json; charset=utf-8")
    .send(written.value);
}
