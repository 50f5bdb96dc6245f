import { z } from "zod";
import type { AppInstance } from "../../app-instance.ts";
import { changePassword } from "../accounts.ts";
import { timeText } from "../book.ts";
import { setCookie } from "../cookies.ts";
import { devicesOf, revokeDevice } from "../devices.ts";
import { sessionOfRequest } from "../open-access.ts";
import { passkeysOf } from "../passkeys.ts";
import { factorsOf } from "../second-factor.ts";
import { beginSession, endSessions } from "../sessions.ts";
import { markBrowser } from "../sign-in.ts";
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
import { device, id, nothing, password, sessionAnswer, time } from "./schemas.ts";
import { answerNew } from "./session-routes.ts";

const tags = ["own account"];

const account = z.object({
  id,
  login: z.string(),
  name: z.string(),
  hasTimeCodes: z.boolean(),
  recoveryCodes: z.number().int().describe("how many are left"),
  passkeys: z.array(z.object({ id: z.string(), name: z.string(), since: time, used: time.nullable() })),
  devices: z.array(z.object({ device, since: time, revoked: z.boolean() })),
});

/** What somebody sees and changes of the own account, but for second factors and tokens. */
export function ownAccountRoutes(app: AppInstance, context: RouteContext): void {
  const { book, access } = context;
  const onRequest = inSession(context);

  app.get(
    "/api/1/account",
    { onRequest, schema: { tags, summary: "The own account", response: { 200: account } } },
    async (request, reply) => {
      const own = await ownAccount(context, request);
      if (own === undefined) return notFound(reply);
      const [factors, passkeys, devices] = await Promise.all([
        factorsOf(book, own),
        passkeysOf(book, own.id),
        devicesOf(book, own.id),
      ]);
      return {
        id: own.id,
        login: own.login,
        name: own.name,
        hasTimeCodes: factors.hasTimeCodes,
        recoveryCodes: factors.recoveryCodes,
        passkeys: passkeys.map((one) => ({
          id: one.id,
          name: one.name,
          since: timeText(one.created_at),
          used: one.used_at === null ? null : timeText(one.used_at),
        })),
        devices: devices.map((one) => ({
          device: one.device,
          since: timeText(one.since),
          revoked: one.revoked === 1,
        })),
      };
    },
  );

  const change = {
    tags,
    summary: "Another password; everywhere else one is signed out",
    body: z.strictObject({ current: password, next: password }),
    response: { 200: sessionAnswer },
  };
  app.put("/api/1/account/password", { onRequest, schema: change }, async (request, reply) => {
    const own = await ownAccount(context, request);
    const session = sessionOfRequest(request);
    if (own === undefined || session === undefined) return notFound(reply);
    const wrong = await wrongPassword(book, own, request.body.current);
    if (wrong !== undefined) return refusal(reply, wrong);
    const changed = await changePassword(book, own, request.body.next);
    if (!changed.ok) return refusal(reply, changed.error);
    await endSessions(book, own.id);
    await note(context, request, "password-changed");
    setCookie(reply, "browser", await markBrowser(book, own.id), book.settings);
    const state = session.person.hasSecondFactor ? "second-factor" : "password-only";
    return answerNew(context, reply, await beginSession(book, own.id, callerOf(request), state));
  });

  const revoke = {
    tags,
    summary: "A device was lost: nothing it writes from now on is taken as one's own",
    params: z.object({ device }),
    response: { 204: nothing },
  };
  app.delete("/api/1/account/devices/:device", { onRequest, schema: revoke }, async (request, reply) => {
    const { device: lost } = request.params;
    if (!(await revokeDevice(book, access.personOf(request)?.id ?? "", lost))) return notFound(reply);
    await note(context, request, "device-revoked", { device: lost });
    return reply.code(204).send(null);
  });
}
