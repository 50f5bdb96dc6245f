import type { FastifyReply } from "fastify";
import type { Issue } from "#core";
import { problem } from "../problem.ts";

/** Statuses of what a store tells; everything else is a mistake of ours. */
const STATUS: Readonly<Record<string, number>> = {
  "store.busy": 503,
  "store.unreachable": 503,
  "store.closed": 503,
  "store.full": 507,
  "store.blob-name": 400,
  "store.blob-part": 400,
  "store.blob-size": 409,
  "store.blob-size-changed": 409,
  "store.blob-offset": 409,
  "store.blob-differs": 409,
  "store.blob-hash": 422,
};

/** Seconds after which a database that was busy may be asked again. */
const WAIT_S = 5;

/** Answers with what a store has told. Nothing of the request counts as done. */
export function storeProblem(reply: FastifyReply, issue: Issue): FastifyReply {
  const status = STATUS[issue.code] ?? 500;
  if (status === 503) reply.header("retry-after", WAIT_S);
  if (status >= 500) reply.log.error({ code: issue.code, values: issue.values }, "the store did not do it");
  return problem(reply, status, issue);
}
