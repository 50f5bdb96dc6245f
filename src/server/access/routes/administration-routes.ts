import { z } from "zod";
import type { AppInstance } from "../../app-instance.ts";
import { error } from "../../issue.ts";
import { accountById, allAccounts, hasAdministrator } from "../accounts.ts";
import { endTokens } from "../api-tokens.ts";
import { DAY_MS, timeText } from "../book.ts";
import { invite, linkPath, passwordLink } from "../links.ts";
import { removeFactors } from "../second-factor.ts";
import { firstBadEvent, readEvents } from "../security-events.ts";
import { endSessions } from "../sessions.ts";
import { note, notFound, type RouteContext, refusal } from "./context.ts";
import { invitationAnswer } from "./people-routes.ts";
import { id, line, nothing, time } from "./schemas.ts";

const tags = ["administration"];
const ofAccount = z.object({ account: id });
const MAX_EVENTS = 500;

const account = z.object({
  id,
  login: z.string(),
  name: z.string(),
  isAdmin: z.boolean(),
  isDisabled: z.boolean(),
  since: time,
});

const event = z.object({
  number: z.number().int(),
  at: time,
  what: z.string(),
  who: z.string(),
  address: z.string(),
  details: z.looseObject({}),
  hash: z.string(),
});

/** For administrators: accounts, and what happened that concerns safety. */
export function administrationRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const onRequest = access.needs("administer");

  const list = { tags, summary: "All accounts", response: { 200: z.object({ accounts: z.array(account) }) } };
  app.get("/api/1/accounts", { onRequest, schema: list }, async () => ({
    accounts: (await allAccounts(book)).map((one) => ({
      id: one.id,
      login: one.login,
      name: one.name,
      isAdmin: one.is_admin === 1,
      isDisabled: one.disabled === 1,
      since: timeText(one.created_at),
    })),
  }));

  const inviting = {
    tags,
    summary: "A link for one more administrator",
    body: z.strictObject({}),
    response: { 201: invitationAnswer },
  };
  app.post("/api/1/invitations", { onRequest, schema: inviting }, async (request, reply) => {
    const by = access.personOf(request)?.id ?? "";
    const secret = await invite(book, { job: undefined, role: "admin", by, lastsMs: DAY_MS });
    await note(context, request, "invitation-made", { role: "admin" });
    return reply.code(201).send({ path: linkPath(secret, "invitation") });
  });

  const events = {
    tags,
    summary: "What happened that concerns safety, newest first",
    querystring: z.object({
      before: z.coerce.number().int().min(1).optional(),
      count: z.coerce.number().int().min(1).max(MAX_EVENTS).default(100),
    }),
    response: { 200: z.object({ events: z.array(event) }) },
  };
  app.get("/api/1/security-events", { onRequest, schema: events }, async (request) => ({
    events: [...(await readEvents(book, request.query.before, request.query.count))],
  }));

  const checked = z.object({
    firstBad: z.number().int().nullable().describe("null: the list is as it was written"),
  });
  const check = { tags, summary: "Whether the list was changed", response: { 200: checked } };
  app.get("/api/1/security-events/check", { onRequest, schema: check }, async () => ({
    firstBad: (await firstBadEvent(book)) ?? null,
  }));

  oneAccountRoutes(app, context);
}

function oneAccountRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const onRequest = access.needs("administer");

  const change = {
    tags,
    summary: "Disable an account, or change its name or whether it administers",
    params: ofAccount,
    body: z.strictObject({
      name: line.optional(),
      isAdmin: z.boolean().optional(),
      isDisabled: z.boolean().optional(),
    }),
    response: { 204: nothing },
  };
  app.patch("/api/1/accounts/:account", { onRequest, schema: change }, async (request, reply) => {
    const about = await accountById(book, request.params.account);
    if (about === undefined) return notFound(reply);
    const {
      name = about.name,
      isAdmin = about.is_admin === 1,
      isDisabled = about.disabled === 1,
    } = request.body;
    const stays = isAdmin && !isDisabled;
    if (!stays && !(await hasAdministrator(book, about.id)))
      return refusal(reply, error("access.last-administrator"));
    await book.db
      .updateTable("accounts")
      .set({ name, is_admin: isAdmin ? 1 : 0, disabled: isDisabled ? 1 : 0 })
      .where("id", "=", about.id)
      .execute();
    if (isDisabled) {
      await endSessions(book, about.id);
      await endTokens(book, about.id);
    }
    await note(context, request, "account-changed", { account: about.id, isAdmin, isDisabled });
    return reply.code(204).send(null);
  });

  const link = {
    tags,
    summary: "A link for a new password, for somebody who forgot it",
    params: ofAccount,
    response: { 201: invitationAnswer },
  };
  app.post("/api/1/accounts/:account/password-link", { onRequest, schema: link }, async (request, reply) => {
    const about = await accountById(book, request.params.account);
    if (about === undefined) return notFound(reply);
    const secret = await passwordLink(book, about.id, access.personOf(request)?.id ?? "");
    await note(context, request, "password-link-made", { account: about.id });
    return reply.code(201).send({ path: linkPath(secret, "password") });
  });

  const factors = {
    tags,
    summary: "Remove the second factors of somebody who has lost them",
    params: ofAccount,
    response: { 204: nothing },
  };
  app.delete(
    "/api/1/accounts/:account/second-factors",
    { onRequest, schema: factors },
    async (request, reply) => {
      const about = await accountById(book, request.params.account);
      if (about === undefined) return notFound(reply);
      await removeFactors(book, about.id);
      await endSessions(book, about.id);
      await endTokens(book, about.id);
      await note(context, request, "second-factor-removed", { account: about.id, kind: "all" });
      return reply.code(204).send(null);
    },
  );

  const sessions = {
    tags,
    summary: "Sign somebody out everywhere, and end the tokens",
    params: ofAccount,
    response: { 204: nothing },
  };
  app.delete("/api/1/accounts/:account/sessions", { onRequest, schema: sessions }, async (request, reply) => {
    const about = await accountById(book, request.params.account);
    if (about === undefined) return notFound(reply);
    await endSessions(book, about.id);
    await endTokens(book, about.id);
    await note(context, request, "session-ended", { account: about.id, which: "all" });
    return reply.code(204).send(null);
  });
}
