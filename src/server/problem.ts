import { STATUS_CODES } from "node:http";
import type { FastifyReply } from "fastify";
import { z } from "zod";
import type { Issue } from "#core";
import { sentenceOf } from "#text";

export const PROBLEM_TYPE = "application/problem+json";

/**
 * What every error of the interface looks like.
 *
 * Source: RFC 9457; `code`, `field` and `values` are extension members (section 3.2).
 */
export const problemSchema = z
  .object({
    type: z.string().describe("always about:blank: the code says what it is"),
    title: z.string().describe("name of the status"),
    status: z.number().int(),
    detail: z.string().describe("a sentence for people, in English"),
    code: z.string().describe("stable, for programs"),
    field: z.string().optional().describe("field of the request that is wrong"),
    values: z.record(z.string(), z.union([z.string(), z.number()])).describe("what the sentence names"),
  })
  .meta({ id: "Problem" });

export type Problem = z.output<typeof problemSchema>;

export const problemOf = (status: number, issue: Issue): Problem => ({
  type: "about:blank",
  title: STATUS_CODES[status] ?? "Error",
  status,
  detail: sentenceOf(issue),
  code: issue.code,
  ...(issue.place.field !== undefined && { field: issue.place.field }),
  values: issue.values,
});

/** Answers with an error. Written as text, so that no schema of a route can cut it. */
export const problem = (reply: FastifyReply, status: number, issue: Issue): FastifyReply =>
  reply
    .code(status)
    .header("cache-control", "no-store")
    .type(`${PROBLEM_TYPE}; charset=utf-8`)
    .serializer((body: unknown) => String(body))
    .send(JSON.stringify(problemOf(status, issue)));
