import { z } from "zod";
import { type Issue, ok, type Result } from "#core";
import type { AppInstance } from "../../app-instance.ts";
import { error } from "../../issue.ts";
import { accountById, changePassword, makeAccount } from "../accounts.ts";
import { endTokens } from "../api-tokens.ts";
import { timeText } from "../book.ts";
import { setCookie } from "../cookies.ts";
import { endSetUp, type OneTimeLink, readLink, redeemLink } from "../links.ts";
import { giveRole } from "../members.ts";
import { jobRole } from "../rights.ts";
import { writeEvent } from "../security-events.ts";
import { beginSession, endSessions } from "../sessions.ts";
import { markBrowser, takeTries } from "../sign-in.ts";
import { callerOf, inSession, note, notFound, type RouteContext, refusal } from "./context.ts";
import { line, login, nothing, password, role, secret, sessionAnswer, time } from "./schemas.ts";
import { answerNew } from "./session-routes.ts";

const tags = ["links"];

/** What somebody does who has been given a link. The secret comes in the body, never in an address. */
export function linkRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;

  const show = {
    tags,
    summary: "What an invitation is for",
    body: z.strictObject({ secret }),
    response: { 200: z.object({ job: z.string().nullable(), role: role.nullable(), until: time }) },
  };
  app.post("/api/1/invitations/show", { schema: show }, async (request, reply) => {
    const link = await readLink(book, request.body.secret, "invitation");
    if (!link.ok) return refused(context, request.ip, reply, link.error);
    const { job, role: found, expires_at } = link.value;
    return {
      job,
      role: found === "admin" ? ("admin" as const) : (jobRole(found) ?? null),
      until: timeText(expires_at),
    };
  });

  const accept = {
    tags,
    summary: "Make an account with an invitation, and sign in",
    body: z.strictObject({ secret, login, name: line, password }),
    response: { 201: sessionAnswer },
  };
  app.post("/api/1/invitations/accept", { schema: accept }, async (request, reply) => {
    const free = await takeTries(book, [{ pace: "address", key: `link ${request.ip}` }]);
    if (!free.ok) return refusal(reply, free.error);
    const { secret: given, ...about } = request.body;
    const made = await redeemLink(book, given, "invitation", (link) =>
      makeAccount(book, { ...about, isAdmin: link.role === "admin" }).then((account) =>
        joined(context, link, account),
      ),
    );
    if (!made.ok) return refused(context, request.ip, reply, made.error);
    const event = { who: made.value, address: request.ip };
    await writeEvent(book, { ...event, what: "account-made" });
    await writeEvent(book, { ...event, what: "invitation-used" });
    setCookie(reply, "browser", await markBrowser(book, made.value), book.settings);
    const session = await beginSession(book, made.value, callerOf(request), "password-only");
    return reply.code(201).send(await answerNew(context, reply, session));
  });

  const join = {
    tags,
    summary: "Take an invitation with the account one has",
    body: z.strictObject({ secret }),
    response: { 204: nothing },
  };
  app.post(
    "/api/1/invitations/join",
    { onRequest: inSession(context), schema: join },
    async (request, reply) => {
      const person = access.personOf(request);
      if (person === undefined) return notFound(reply);
      const used = await redeemLink(book, request.body.secret, "invitation", (link) =>
        joined(context, link, ok(person.id)),
      );
      if (!used.ok) return refused(context, request.ip, reply, used.error);
      await note(context, request, "invitation-used");
      return reply.code(204).send(null);
    },
  );

  const renew = {
    tags,
    summary: "A new password with a link; one is signed out everywhere, and tokens end",
    body: z.strictObject({ secret, password }),
    response: { 204: nothing },
  };
  app.post("/api/1/password-links/use", { schema: renew }, async (request, reply) => {
    const free = await takeTries(book, [{ pace: "address", key: `link ${request.ip}` }]);
    if (!free.ok) return refusal(reply, free.error);
    const used = await redeemLink(book, request.body.secret, "password", async (link) => {
      const account = await accountById(book, link.account ?? "");
      if (account === undefined || account.disabled === 1)
        return { ok: false, error: error("access.link-dead") };
      const changed = await changePassword(book, account, request.body.password);
      return changed.ok ? ok(account.id) : changed;
    });
    if (!used.ok) return refused(context, request.ip, reply, used.error);
    await endSessions(book, used.value);
    await endTokens(book, used.value);
    await writeEvent(book, {
      what: "password-changed",
      who: used.value,
      address: request.ip,
      details: { by: "link" },
    });
    return reply.code(204).send(null);
  });
}

/** Gives what an invitation promises. */
async function joined(
  { book }: RouteContext,
  link: OneTimeLink,
  account: Result<string, Issue>,
): Promise<Result<string, Issue>> {
  if (!account.ok) return account;
  const given = jobRole(link.role);
  if (link.role === "admin") {
    await book.db.updateTable("accounts").set({ is_admin: 1 }).where("id", "=", account.value).execute();
    await endSetUp(book);
  } else if (link.job !== null && given !== undefined) await giveRole(book, link.job, account.value, given);
  return account;
}

async function refused(
  { book }: RouteContext,
  address: string,
  reply: Parameters<typeof refusal>[0],
  issue: Issue,
) {
  if (issue.code === "access.link-dead")
    await writeEvent(book, { what: "link-refused", who: undefined, address });
  return refusal(reply, issue);
}
