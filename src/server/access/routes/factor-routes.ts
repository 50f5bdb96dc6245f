import type { FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import type { AppInstance } from "../../app-instance.ts";
import { error } from "../../issue.ts";
import type { Account } from "../accounts.ts";
import { newChallenge, readChallenge } from "../challenges.ts";
import { addPasskey, askForPasskey, removePasskey } from "../passkeys.ts";
import { addTimeCodes, factorsOf, hasFactor, makeRecoveryCodes, removeTimeCodes } from "../second-factor.ts";
import { newTimeSecret, timeSecretAddress } from "../secrets/time-code.ts";
import { beginSession, endSessions, forgetSecondFactor } from "../sessions.ts";
import { takeTries } from "../sign-in.ts";
import {
  callerOf,
  inSession,
  note,
  notFound,
  ownAccount,
  type RouteContext,
  refusal,
  wrongPassword,
} from "./context.ts";
import { code, id, line, newPasskey, nothing, password, question, sessionAnswer } from "./schemas.ts";
import { answerNew } from "./session-routes.ts";

const tags = ["second factors"];

const added = z.object({
  session: sessionAnswer,
  recoveryCodes: z
    .array(z.string())
    .describe("to be written on paper; seen only now. Empty: those one has still work"),
});

/** Adding and removing what is shown besides the password. Each needs the password once more. */
export function factorRoutes(app: AppInstance, context: RouteContext): void {
  const { book } = context;
  const onRequest = inSession(context);
  timeCodeRoutes(app, context);
  passkeyRoutes(app, context);

  const codes = {
    tags,
    summary: "New recovery codes in place of the old ones",
    body: z.strictObject({ password }),
    response: { 200: z.object({ recoveryCodes: z.array(z.string()) }) },
  };
  app.post("/api/1/account/recovery-codes", { onRequest, schema: codes }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined || !hasFactor(await factorsOf(book, own))) return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.password);
    if (wrong !== undefined) return refusal(reply, wrong);
    await note(context, request, "recovery-codes-made");
    return { recoveryCodes: [...(await makeRecoveryCodes(book, own.id))] };
  });
}

function timeCodeRoutes(app: AppInstance, context: RouteContext): void {
  const { book } = context;
  const onRequest = inSession(context);
  const ask = {
    tags,
    summary: "A secret for an authenticator program",
    body: z.strictObject({ password }),
    response: {
      200: z.object({ challenge: id, secret: z.string(), address: z.string().describe("for a QR code") }),
    },
  };
  app.post("/api/1/account/time-codes/question", { onRequest, schema: ask }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined) return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.password);
    if (wrong !== undefined) return refusal(reply, wrong);
    const { id: challenge, challenge: secret } = await newChallenge(
      book,
      "time-codes",
      own.id,
      newTimeSecret(),
    );
    return { challenge, secret, address: timeSecretAddress(secret, own.login) };
  });

  const add = {
    tags,
    summary: "Begin with the authenticator program, by its first code",
    body: z.strictObject({ challenge: id, code }),
    response: { 200: added },
  };
  app.post("/api/1/account/time-codes", { onRequest, schema: add }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined) return notFound(reply);
    const free = await takeTries(book, [{ pace: "secondFactor", key: own.id }]);
    if (!free.ok) return refusal(reply, free.error);
    const secret = await readChallenge(book, request.body.challenge, "time-codes", own.id);
    if (secret === undefined) return refusal(reply, error("access.wrong-code", {}, "code"));
    const begun = await addTimeCodes(book, own, secret, request.body.code);
    if (!begun.ok) return refusal(reply, begun.error);
    return answerAdded(context, request, reply, own, "time-codes");
  });

  const remove = {
    tags,
    summary: "No more codes of an authenticator program",
    body: z.strictObject({ password }),
    response: { 204: nothing },
  };
  app.delete("/api/1/account/time-codes", { onRequest, schema: remove }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined) return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.password);
    if (wrong !== undefined) return refusal(reply, wrong);
    if (!(await removeTimeCodes(book, own.id))) return notFound(reply);
    await removed(context, request, { ...own, totp_secret: null }, "time-codes");
    return reply.code(204).send(null);
  });
}

function passkeyRoutes(app: AppInstance, context: RouteContext): void {
  const { book } = context;
  const onRequest = inSession(context);
  const ask = {
    tags,
    summary: "Ask for a new passkey",
    body: z.strictObject({ password }),
    response: { 200: question },
  };
  app.post("/api/1/account/passkeys/question", { onRequest, schema: ask }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined) return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.password);
    if (wrong !== undefined) return refusal(reply, wrong);
    const asked = await askForPasskey(book, own);
    return asked.ok ? { ...asked.value, options: { ...asked.value.options } } : refusal(reply, asked.error);
  });

  const add = {
    tags,
    summary: "Take a new passkey over",
    body: z.strictObject({ challenge: id, name: line, response: newPasskey }),
    response: { 200: added },
  };
  app.post("/api/1/account/passkeys", { onRequest, schema: add }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined) return notFound(reply);
    const kept = await addPasskey(book, own, request.body as Parameters<typeof addPasskey>[2]);
    if (!kept.ok) return refusal(reply, kept.error);
    return answerAdded(context, request, reply, own, "passkey");
  });

  const remove = {
    tags,
    summary: "No more this passkey",
    body: z.strictObject({ password }),
    params: z.object({ passkey: id }),
    response: { 204: nothing },
  };
  app.delete("/api/1/account/passkeys/:passkey", { onRequest, schema: remove }, async (request, reply) => {
    const own = await ownAccount(context, request);
    if (own === undefined) return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.password);
    if (wrong !== undefined) return refusal(reply, wrong);
    if (!(await removePasskey(book, own.id, request.params.passkey))) return notFound(reply);
    await removed(context, request, own, "passkey");
    return reply.code(204).send(null);
  });
}

/** From now on the account asks for the factor: whoever is signed in elsewhere has to show it there. */
async function answerAdded(
  context: RouteContext,
  request: FastifyRequest,
  reply: FastifyReply,
  own: Account,
  kind: string,
) {
  const { book } = context;
  await note(context, request, "second-factor-added", { kind });
  await endSessions(book, own.id);
  const secret = await beginSession(book, own.id, callerOf(request), "second-factor");
  const { recoveryCodes } = await factorsOf(book, own);
  return {
    session: await answerNew(context, reply, secret),
    recoveryCodes: recoveryCodes > 0 ? [] : [...(await makeRecoveryCodes(book, own.id))],
  };
}

async function removed(
  context: RouteContext,
  request: FastifyRequest,
  own: Account,
  kind: string,
): Promise<void> {
  const { book } = context;
  await note(context, request, "second-factor-removed", { kind });
  if (!hasFactor(await factorsOf(book, own))) await forgetSecondFactor(book, own.id);
}
