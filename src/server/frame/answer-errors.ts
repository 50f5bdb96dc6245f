import type { FastifyError, FastifyReply, FastifyRequest } from "fastify";
import { hasZodFastifySchemaValidationErrors } from "fastify-type-provider-zod";
import type { Issue } from "#core";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { problem } from "../problem.ts";

/** Every error that a handler or the frame itself reports is answered as a problem; nothing of the inside of the program is told. */
export function answerErrors(app: AppInstance): void {
  app.setErrorHandler(answerError);
}

/** What the router could not even read has passed none of the frame's hooks. */
export const answerBadAddress = (
  thrown: FastifyError,
  request: FastifyRequest,
  reply: FastifyReply,
): unknown => answerError(thrown, request, reply.headers(BARE_HEADERS));

const BARE_HEADERS = {
  "content-security-policy": "default-src 'none';frame-ancestors 'none'",
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
};

function answerError(thrown: FastifyError, request: FastifyRequest, reply: FastifyReply): unknown {
  const { status, issue } = answerOf(thrown, request);
  if (status >= 500) request.log.error({ err: thrown }, "a mistake of the program");
  return problem(reply, status, issue);
}

export interface Answer {
  readonly status: number;
  readonly issue: Issue;
}

const CODES: Readonly<Record<string, (request: FastifyRequest) => Answer>> = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: (request) => ({
    status: 415,
    issue: error("server.media-type", { found: request.headers["content-type"] ?? "none" }),
  }),
  FST_ERR_CTP_BODY_TOO_LARGE: (request) => ({
    status: 413,
    issue: error("server.body-too-large", { expected: request.routeOptions.bodyLimit }),
  }),
  FST_ERR_CTP_INVALID_JSON_BODY: () => ({ status: 400, issue: error("server.body-not-json") }),
  FST_ERR_CTP_EMPTY_JSON_BODY: () => ({ status: 400, issue: error("server.body-not-json") }),
  FST_ERR_BAD_URL: () => ({ status: 400, issue: error("server.bad-address") }),
  FST_ERR_ASYNC_CONSTRAINT: () => ({ status: 400, issue: error("server.bad-address") }),
};

function answerOf(thrown: FastifyError, request: FastifyRequest): Answer {
  if (thrown instanceof RequestRefused) return thrown.answer;
  if (hasZodFastifySchemaValidationErrors(thrown)) {
    const [first] = thrown.validation;
    const field = [thrown.validationContext, ...(first?.instancePath.split("/") ?? [])]
      .filter((part) => part !== undefined && part !== "")
      .join(".");
    return {
      status: 400,
      issue: error("server.request-field", { field, found: first?.message ?? "" }, field),
    };
  }
  const known = CODES[thrown.code];
  if (known !== undefined) return known(request);
  const status = thrown.statusCode ?? 500;
  if (status === 400 && thrown instanceof SyntaxError)
    return { status, issue: error("server.body-not-json") };
  if (status >= 400 && status < 500) return { status, issue: error("server.bad-request") };
  return { status: 500, issue: error("server.mistake", { request: request.id }) };
}

/** Lets the frame's own plugins refuse a request with a finding of ours. */
export class RequestRefused extends Error {
  override readonly name = "RequestRefused";
  readonly answer: Answer;
  readonly statusCode: number;

  constructor(answer: Answer) {
    super(answer.issue.code);
    this.answer = answer;
    this.statusCode = answer.status;
  }
}
