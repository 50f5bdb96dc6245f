import { z } from "zod";
import type { AppInstance } from "../../app-instance.ts";
import { accountById } from "../accounts.ts";
import { DAY_MS, timeText } from "../book.ts";
import { invite, linkPath, MAX_LINK_DAYS, openInvitations, withdrawInvitation } from "../links.ts";
import { giveRole, membersOf, takeRole } from "../members.ts";
import { jobRole } from "../rights.ts";
import { note, notFound, type RouteContext } from "./context.ts";
import { id, nothing, roleInJob, time } from "./schemas.ts";

const tags = ["people of a job"];
const ofJob = z.object({ job: z.string() });

const days = z.number().int().min(1).max(MAX_LINK_DAYS).default(3);
export const invitationAnswer = z.object({
  path: z.string().describe("behind the address of the server; seen only now"),
});

/** Who works on a job, and inviting others. */
export function peopleRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const seen = access.needs("read");
  const managed = access.needs("manage");

  const members = z.object({ people: z.array(z.object({ account: id, name: z.string(), role: roleInJob })) });
  const list = { tags, summary: "People of a job", params: ofJob, response: { 200: members } };
  app.get("/api/1/jobs/:job/people", { onRequest: seen, schema: list }, async (request) => ({
    people: [...(await membersOf(book, request.params.job))],
  }));

  const give = {
    tags,
    summary: "Another role for somebody of the job; an administrator may add anybody",
    params: ofJob.extend({ account: id }),
    body: z.strictObject({ role: roleInJob }),
    response: { 204: nothing },
  };
  app.put(
    "/api/1/jobs/:job/people/:account",
    { onRequest: managed, schema: give },
    async (request, reply) => {
      const { job, account } = request.params;
      const isMember = (await membersOf(book, job)).some((one) => one.account === account);
      const mayAdd =
        access.personOf(request)?.isAdmin === true && (await accountById(book, account)) !== undefined;
      if (!isMember && !mayAdd) return notFound(reply);
      await giveRole(book, job, account, request.body.role);
      await note(context, request, "role-given", { job, account, role: request.body.role });
      return reply.code(204).send(null);
    },
  );

  const take = {
    tags,
    summary: "Somebody leaves the job",
    params: ofJob.extend({ account: id }),
    response: { 204: nothing },
  };
  app.delete(
    "/api/1/jobs/:job/people/:account",
    { onRequest: managed, schema: take },
    async (request, reply) => {
      const { job, account } = request.params;
      if (!(await takeRole(book, job, account))) return notFound(reply);
      await note(context, request, "role-taken", { job, account });
      return reply.code(204).send(null);
    },
  );

  invitationRoutes(app, context);
}

function invitationRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const managed = access.needs("manage");

  const open = z.object({ invitations: z.array(z.object({ id, role: roleInJob.nullable(), until: time })) });
  const list = {
    tags,
    summary: "Invitations that were not used yet",
    params: ofJob,
    response: { 200: open },
  };
  app.get("/api/1/jobs/:job/invitations", { onRequest: managed, schema: list }, async (request) => ({
    invitations: (await openInvitations(book, request.params.job)).map((one) => ({
      id: one.id,
      role: jobRole(one.role) ?? null,
      until: timeText(one.expires_at),
    })),
  }));

  const make = {
    tags,
    summary: "A link with which one more person joins the job",
    params: ofJob,
    body: z.strictObject({ role: roleInJob, days }),
    response: { 201: invitationAnswer },
  };
  app.post("/api/1/jobs/:job/invitations", { onRequest: managed, schema: make }, async (request, reply) => {
    const { job } = request.params;
    const by = access.personOf(request)?.id ?? "";
    const { role } = request.body;
    const secret = await invite(book, { job, role, by, lastsMs: request.body.days * DAY_MS });
    await note(context, request, "invitation-made", { job, role });
    return reply.code(201).send({ path: linkPath(secret, "invitation") });
  });

  const withdraw = {
    tags,
    summary: "Withdraw an invitation",
    params: ofJob.extend({ invitation: id }),
    response: { 204: nothing },
  };
  app.delete(
    "/api/1/jobs/:job/invitations/:invitation",
    { onRequest: managed, schema: withdraw },
    async (request, reply) => {
      const { job, invitation } = request.params;
      if (!(await withdrawInvitation(book, job, invitation))) return notFound(reply);
      await note(context, request, "invitation-withdrawn", { job });
      return reply.code(204).send(null);
    },
  );
}
