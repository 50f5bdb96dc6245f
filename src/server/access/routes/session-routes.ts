import type { FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import type { AppInstance } from "../../app-instance.ts";
import { error } from "../../issue.ts";
import { problem } from "../../problem.ts";
import { accountById } from "../accounts.ts";
import { timeText } from "../book.ts";
import { clearCookie, readCookie, setCookie } from "../cookies.ts";
import { rolesOf } from "../members.ts";
import { sessionOfRequest } from "../open-access.ts";
import { askPasskey, checkPasskey } from "../passkeys.ts";
import type { Person } from "../person.ts";
import { factorsOf, takeCode } from "../second-factor.ts";
import { writeEvent } from "../security-events.ts";
import {
  beginSession,
  endSession,
  endSessions,
  renewWithSecondFactor,
  sessionOf,
  sessionsOf,
} from "../sessions.ts";
import { markBrowser, signIn, takeTries } from "../sign-in.ts";
import { giveBack } from "../tries.ts";
import { callerOf, inSession, note, notFound, type RouteContext, refusal } from "./context.ts";
import {
  code,
  id,
  login,
  nothing,
  password,
  question,
  type SessionAnswer,
  sessionAnswer,
  shownPasskey,
  time,
} from "./schemas.ts";

const tags = ["signing in"];

const listed = z.object({
  id,
  isThisOne: z.boolean(),
  address: z.string(),
  program: z.string(),
  since: time,
  seen: time,
});

/** Signing in and out, and the list of where one is signed in. */
export function sessionRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;

  app.get(
    "/api/1/session",
    { schema: { tags, summary: "Who is signed in", response: { 200: sessionAnswer } } },
    (request) => answerOf(context, access.personOf(request), sessionOfRequest(request)),
  );

  const passwordSignIn = {
    tags,
    summary: "Sign in with a password",
    body: z.strictObject({ login, password }),
    response: { 200: sessionAnswer },
  };
  app.post("/api/1/session", { schema: passwordSignIn }, async (request, reply) => {
    const browser = readCookie(request, "browser", book.settings);
    const signed = await signIn(book, { ...request.body, ...callerOf(request), browser });
    if (!signed.ok) return refusal(reply, signed.error);
    await leave(context, request);
    setCookie(reply, "browser", signed.value.browser, book.settings);
    return answerNew(context, reply, signed.value.session);
  });

  app.delete(
    "/api/1/session",
    { schema: { tags, summary: "Sign out", response: { 204: nothing } } },
    async (request, reply) => {
      await leave(context, request);
      clearCookie(reply, "session", book.settings);
      return reply.code(204).send(null);
    },
  );

  passkeySignIn(app, context);
  secondFactor(app, context);
  sessionList(app, context);
}

function passkeySignIn(app: AppInstance, context: RouteContext): void {
  const { book } = context;
  const asked = { tags, summary: "Ask for a passkey to sign in with", response: { 200: question } };
  app.post("/api/1/session/passkey/question", { schema: asked }, async (_request, reply) => {
    const made = await askPasskey(book, null);
    return made.ok ? { ...made.value, options: { ...made.value.options } } : refusal(reply, made.error);
  });

  const shown = {
    tags,
    summary: "Sign in with a passkey, which counts as both factors",
    body: z.strictObject({ challenge: id, response: shownPasskey }),
    response: { 200: sessionAnswer },
  };
  app.post("/api/1/session/passkey", { schema: shown }, async (request, reply) => {
    const counted = { pace: "address", key: `passkey ${request.ip}` } as const;
    const free = await takeTries(book, [counted]);
    if (!free.ok) return refusal(reply, free.error);
    const used = await checkPasskey(book, null, request.body as Parameters<typeof checkPasskey>[2]);
    const account = used.ok ? await accountById(book, used.value) : undefined;
    if (account === undefined || account.disabled === 1) {
      await writeEvent(book, {
        what: "sign-in-failed",
        who: account?.id,
        address: request.ip,
        details: { by: "passkey" },
      });
      return refusal(reply, used.ok ? error("access.passkey-refused") : used.error);
    }
    await giveBack(book, counted);
    await leave(context, request);
    const session = await beginSession(book, account.id, callerOf(request), "second-factor");
    await writeEvent(book, {
      what: "signed-in",
      who: account.id,
      address: request.ip,
      details: { by: "passkey" },
    });
    setCookie(reply, "browser", await markBrowser(book, account.id), book.settings);
    return answerNew(context, reply, session);
  });
}

function secondFactor(app: AppInstance, context: RouteContext): void {
  const { book } = context;
  const asked = { tags, summary: "Ask for a passkey as second factor", response: { 200: question } };
  app.post("/api/1/session/second-factor/question", { schema: asked }, async (request, reply) => {
    const session = sessionOfRequest(request);
    if (session === undefined) return problem(reply, 401, error("access.sign-in-needed"));
    const made = await askPasskey(book, session.person.id);
    return made.ok ? { ...made.value, options: { ...made.value.options } } : refusal(reply, made.error);
  });

  const shown = {
    tags,
    summary: "Show the second factor: a code, or the answer of a passkey",
    body: z.union([z.strictObject({ code }), z.strictObject({ challenge: id, response: shownPasskey })]),
    response: { 200: sessionAnswer },
  };
  app.post("/api/1/session/second-factor", { schema: shown }, async (request, reply) => {
    const session = sessionOfRequest(request);
    const account = session && (await accountById(book, session.person.id));
    if (session === undefined || account === undefined)
      return problem(reply, 401, error("access.sign-in-needed"));
    const counted = { pace: "secondFactor", key: account.id } as const;
    const free = await takeTries(book, [counted]);
    if (!free.ok) return refusal(reply, free.error);
    const event = { who: account.id, address: request.ip };
    const used =
      "code" in request.body
        ? await takeCode(book, account, request.body.code)
        : await checkPasskey(book, account.id, request.body as Parameters<typeof checkPasskey>[2]);
    if (!used.ok) {
      await writeEvent(book, { ...event, what: "second-factor-failed" });
      return refusal(reply, used.error);
    }
    await giveBack(book, counted);
    await writeEvent(book, {
      ...event,
      what: used.value === "recovery-code" ? "recovery-code-used" : "second-factor-shown",
    });
    return answerNew(context, reply, await renewWithSecondFactor(book, session, callerOf(request)));
  });
}

function sessionList(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const onRequest = inSession(context);
  const list = {
    tags,
    summary: "Where one is signed in",
    response: { 200: z.object({ sessions: z.array(listed) }) },
  };
  app.get("/api/1/sessions", { onRequest, schema: list }, async (request) => {
    const rows = await sessionsOf(book, access.personOf(request)?.id ?? "");
    const own = sessionOfRequest(request)?.id;
    return {
      sessions: rows.map((row) => ({
        id: row.id,
        isThisOne: row.id === own,
        address: row.address,
        program: row.program,
        since: timeText(row.created_at),
        seen: timeText(row.seen_at),
      })),
    };
  });

  const others = { tags, summary: "Sign out everywhere else", response: { 204: nothing } };
  app.delete("/api/1/sessions", { onRequest, schema: others }, async (request, reply) => {
    await endSessions(book, access.personOf(request)?.id ?? "", sessionOfRequest(request)?.id);
    await note(context, request, "session-ended", { which: "others" });
    return reply.code(204).send(null);
  });

  const one = {
    tags,
    summary: "End one session",
    params: z.object({ session: id }),
    response: { 204: nothing },
  };
  app.delete("/api/1/sessions/:session", { onRequest, schema: one }, async (request, reply) => {
    if (!(await endSession(book, access.personOf(request)?.id ?? "", request.params.session)))
      return notFound(reply);
    await note(context, request, "session-ended", { which: request.params.session });
    return reply.code(204).send(null);
  });
}

/** Ends the session a request came with, if any: signing in begins a new one. */
async function leave({ book }: RouteContext, request: FastifyRequest): Promise<void> {
  const session = sessionOfRequest(request);
  if (session === undefined) return;
  await endSession(book, session.person.id, session.id);
  await writeEvent(book, { what: "signed-out", who: session.person.id, address: request.ip });
}

/** Hands a new session to the browser, and tells what it is good for. */
export async function answerNew(
  context: RouteContext,
  reply: FastifyReply,
  secret: string,
): Promise<SessionAnswer> {
  setCookie(reply, "session", secret, context.book.settings);
  const session = await sessionOf(context.book, secret);
  return answerOf(context, session?.isPending === false ? session.person : undefined, session);
}

async function answerOf(
  { book }: RouteContext,
  person: Person | undefined,
  session: Awaited<ReturnType<typeof sessionOf>>,
): Promise<SessionAnswer> {
  const account = session?.isPending === true ? await accountById(book, session.person.id) : undefined;
  const factors = account && (await factorsOf(book, account));
  return {
    mode: book.settings.mode,
    person: person ?? null,
    secondFactor:
      factors === undefined ? null : { timeCodes: factors.hasTimeCodes, passkeys: factors.passkeys > 0 },
    roles: person === undefined ? {} : Object.fromEntries(await rolesOf(book, person.id)),
  };
}
