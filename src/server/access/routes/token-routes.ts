import { z } from "zod";
import type { AppInstance } from "../../app-instance.ts";
import { error } from "../../issue.ts";
import { endToken, MAX_TOKEN_DAYS, makeToken, scopesOf, tokensOf } from "../api-tokens.ts";
import { timeText } from "../book.ts";
import { hindranceAnywhere } from "../members.ts";
import {
  inSession,
  note,
  notFound,
  ownAccount,
  type RouteContext,
  refusal,
  wrongPassword,
} from "./context.ts";
import { id, line, nothing, password, right, time } from "./schemas.ts";

const tags = ["tokens"];
const MAX_TOKENS = 50;

const listed = z.object({
  id,
  name: z.string(),
  scopes: z.array(right),
  since: time,
  until: time,
  used: time.nullable(),
});

/** Tokens for the command line and other programs of a person. */
export function tokenRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const onRequest = inSession(context);

  const list = { tags, summary: "Own tokens", response: { 200: z.object({ tokens: z.array(listed) }) } };
  app.get("/api/1/account/tokens", { onRequest, schema: list }, async (request) => {
    const tokens = await tokensOf(book, access.personOf(request)?.id ?? "");
    return {
      tokens: tokens.map((one) => ({
        id: one.id,
        name: one.name,
        scopes: [...scopesOf(one)],
        since: timeText(one.created_at),
        until: timeText(one.expires_at),
        used: one.used_at === null ? null : timeText(one.used_at),
      })),
    };
  });

  const make = {
    tags,
    summary: "A token for a program; it never may more than its person, whatever its scopes",
    body: z.strictObject({
      password,
      name: line,
      scopes: z.array(right).min(1).max(10),
      days: z.number().int().min(1).max(MAX_TOKEN_DAYS).default(90),
    }),
    response: { 201: z.object({ id, token: z.string().describe("seen only now") }) },
  };
  app.post("/api/1/account/tokens", { onRequest, schema: make }, async (request, reply) => {
    const person = access.personOf(request);
    const own = await ownAccount(context, request);
    if (own === undefined || person === undefined || (await tokensOf(book, person.id)).length >= MAX_TOKENS)
      return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.password);
    if (wrong !== undefined) return refusal(reply, wrong);
    for (const scope of request.body.scopes)
      if ((await hindranceAnywhere(book, person, scope)) !== undefined)
        return refusal(reply, error("access.scope-too-wide", { right: scope }, "scopes"));
    const made = await makeToken(book, person, request.body);
    await note(context, request, "token-made", { token: made.id, scopes: request.body.scopes.join(" ") });
    return reply.code(201).send(made);
  });

  const end = { tags, summary: "End a token", params: z.object({ token: id }), response: { 204: nothing } };
  app.delete("/api/1/account/tokens/:token", { onRequest, schema: end }, async (request, reply) => {
    if (!(await endToken(book, access.personOf(request)?.id ?? "", request.params.token)))
      return notFound(reply);
    await note(context, request, "token-ended", { token: request.params.token });
    return reply.code(204).send(null);
  });
}
