import { subscribe, unsubscribe } from "node:diagnostics_channel";
import type { FastifyInstance, RouteOptions } from "fastify";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Right, ROLES, type Role } from "../src/server/access/person.ts";
import { openPeopledOffice, type PeopledOffice } from "./support/office-with-people.ts";

/**
 * Who may reach a route:
 * "public": everybody; "own": whoever is signed in, about oneself or what one may see; a right: whoever has it in the job of the
 * address; "entries": whoever may write the entries that are sent, which the tests of sending hold against each kind; "hidden": a
 * secret of the settings, without which the route is not there.
 */
type Reach = "public" | "own" | "entries" | "hidden" | Right;

/** Every route there is. One that is not here fails the test: whoever adds a route says who may reach it. */
const REACH: Readonly<Record<string, Reach>> = {
  "GET /api/1/health/live": "public",
  "GET /api/1/health/ready": "public",
  "GET /api/1/openapi.json": "public",
  "GET /api/1/docs": "public",
  "GET /api/1/docs.css": "public",

  "GET /api/1/session": "public",
  "POST /api/1/session": "public",
  "DELETE /api/1/session": "public",
  "POST /api/1/session/passkey/question": "public",
  "POST /api/1/session/passkey": "public",
  "POST /api/1/invitations/show": "public",
  "POST /api/1/invitations/accept": "public",
  "POST /api/1/password-links/use": "public",

  "POST /api/1/session/second-factor/question": "own",
  "POST /api/1/session/second-factor": "own",
  "GET /api/1/sessions": "own",
  "DELETE /api/1/sessions": "own",
  "DELETE /api/1/sessions/:session": "own",
  "GET /api/1/account": "own",
  "PUT /api/1/account/password": "own",
  "DELETE /api/1/account/devices/:device": "own",
  "POST /api/1/account/recovery-codes": "own",
  "POST /api/1/account/time-codes/question": "own",
  "POST /api/1/account/time-codes": "own",
  "DELETE /api/1/account/time-codes": "own",
  "POST /api/1/account/passkeys/question": "own",
  "POST /api/1/account/passkeys": "own",
  "DELETE /api/1/account/passkeys/:passkey": "own",
  "GET /api/1/account/tokens": "own",
  "POST /api/1/account/tokens": "own",
  "DELETE /api/1/account/tokens/:token": "own",
  "POST /api/1/invitations/join": "own",

  "GET /api/1/metrics": "hidden",

  "GET /api/1/office": "own",
  "GET /api/1/jobs": "own",
  "GET /api/1/jobs/:job": "read",
  "GET /api/1/jobs/:job/head": "read",
  "GET /api/1/jobs/:job/proof/inclusion": "read",
  "GET /api/1/jobs/:job/proof/consistency": "read",
  "GET /api/1/jobs/:job/evidence.zip": "read",
  "GET /api/1/jobs/:job/results": "read",
  "GET /api/1/jobs/:job/folder.zip": "read",
  "GET /api/1/jobs/:job/pull": "read",
  "POST /api/1/jobs/:job/push": "entries",
  "GET /api/1/jobs/:job/live": "read",
  "GET /api/1/jobs/:job/aside": "read",
  "POST /api/1/jobs/:job/aside/:key/take": "read",
  "POST /api/1/jobs/:job/files": "read",
  "GET /api/1/jobs/:job/chains/:device/:sequence/files/:blob": "read",
  "PUT /api/1/jobs/:job/chains/:device/:sequence/files/:blob": "read",
  "GET /api/1/jobs/:job/heavy-work": "read",
  "POST /api/1/jobs/:job/heavy-work": "read",
  "GET /api/1/jobs/:job/heavy-work/:work": "read",
  "GET /api/1/jobs/:job/heavy-work/:work/result": "read",
  "POST /api/1/jobs/:job/heavy-work/:work/cancel": "read",

  "GET /api/1/jobs/:job/people": "read",
  "PUT /api/1/jobs/:job/people/:account": "manage",
  "DELETE /api/1/jobs/:job/people/:account": "manage",
  "GET /api/1/jobs/:job/invitations": "manage",
  "POST /api/1/jobs/:job/invitations": "manage",
  "DELETE /api/1/jobs/:job/invitations/:invitation": "manage",

  "GET /api/1/accounts": "administer",
  "PATCH /api/1/accounts/:account": "administer",
  "POST /api/1/accounts/:account/password-link": "administer",
  "DELETE /api/1/accounts/:account/second-factors": "administer",
  "DELETE /api/1/accounts/:account/sessions": "administer",
  "POST /api/1/invitations": "administer",
  "GET /api/1/security-events": "administer",
  "GET /api/1/security-events/check": "administer",
};

/** The table of docs/security.md, written a second time so that a slip in the program shows. */
const MAY: Readonly<Record<Role, readonly Right[]>> = {
  technician: ["read", "record"],
  engineer: ["read", "record", "set-up", "judge", "sign"],
  reviewer: ["read", "judge", "sign"],
  manager: ["read", "record", "set-up", "judge", "sign", "manage"],
  admin: ["read", "record", "set-up", "judge", "sign", "manage", "administer"],
};

const JOB = "job-own";
const OTHER_JOB = "job-other";
const HEX = "ab".repeat(32);
/** Something for each name in an address; none of these is there. */
const VALUES: Readonly<Record<string, string>> = { device: HEX, blob: HEX };
/** A body for what looks at it before it asks who sends it. */
const BODIES: Readonly<Record<string, object>> = { "POST /api/1/session/second-factor": { code: "000000" } };

let at: PeopledOffice;
let routes: readonly string[] = [];
const sessions = new Map<string, string>();

beforeAll(async () => {
  const seen = new Set<string>();
  const watch = (message: unknown) => {
    const { fastify } = message as { fastify: FastifyInstance };
    fastify.addHook("onRoute", ({ method, url }: RouteOptions) => {
      for (const one of [method].flat()) if (one !== "HEAD" && one !== "OPTIONS") seen.add(`${one} ${url}`);
    });
  };
  subscribe("fastify.initialization", watch);
  at = await openPeopledOffice();
  unsubscribe("fastify.initialization", watch);
  await at.app.ready();
  routes = [...seen].sort();
  for (const role of ROLES) sessions.set(role, await at.signedIn(`the-${role}`, role, JOB));
  sessions.set("nobody's", await at.signedIn("the-stranger", "manager", OTHER_JOB));
  // the other job has entries of its own and people of its own
  await at.signedIn("the-other-technician", "technician", OTHER_JOB);
}, 60_000);
afterAll(() => at.close());

const addressOf = (url: string, job: string) =>
  url.replaceAll(/:(\w+)/g, (_, name: string) => (name === "job" ? job : (VALUES[name] ?? "none")));

async function statusOf(route: string, job: string, who: string | undefined): Promise<number> {
  const [method = "GET", url = ""] = route.split(" ");
  const hasBody = method === "POST" || method === "PUT" || method === "PATCH";
  const answer = await at.ask(method as "GET", addressOf(url, job), {
    ...(who !== undefined && { session: sessions.get(who) }),
    ...(hasBody && { body: BODIES[route] ?? {} }),
  });
  return answer.status;
}

/** Refused for who asks. 400, 404 and others only come from behind that check, when nothing fits the made-up names. */
const REFUSED = [401, 403];

describe("every route, every role, the own job and another one", () => {
  test("each route there is says who may reach it, and no other is listed", () => {
    expect(routes.filter((route) => !(route in REACH))).toEqual([]);
    expect(Object.keys(REACH).filter((route) => !routes.includes(route))).toEqual([]);
  });

  test("without signing in only the public ones answer", async () => {
    for (const [route, reach] of Object.entries(REACH)) {
      const status = await statusOf(route, JOB, undefined);
      if (reach === "public") expect([route, REFUSED.includes(status)]).toEqual([route, false]);
      else expect([route, status]).toEqual([route, reach === "hidden" ? 404 : 401]);
    }
  });

  test.each(ROLES)("%s", async (role) => {
    for (const [route, reach] of Object.entries(REACH)) {
      if (reach === "public" || reach === "own" || reach === "entries" || reach === "hidden") continue;
      const may = MAY[role].includes(reach);
      const own = await statusOf(route, JOB, role);
      expect([route, own === 403]).toEqual([route, !may]);
      expect([route, own]).not.toEqual([route, 401]);
      if (reach === "administer" || !route.includes(":job")) continue;
      const other = await statusOf(route, OTHER_JOB, role);
      // a job of others is like one that is not there
      if (role !== "admin") expect([route, other]).toEqual([route, 404]);
    }
  });

  test("a job that one may not read and one that is not there are answered alike", async () => {
    for (const [route, reach] of Object.entries(REACH)) {
      if (!route.includes(":job") || reach === "entries") continue;
      const [method = "GET", url = ""] = route.split(" ");
      const ask = (job: string) => {
        const hasBody = method === "POST" || method === "PUT" || method === "PATCH";
        const asking = { session: sessions.get("technician"), ...(hasBody && { body: {} }) };
        return at.ask(method as "GET", addressOf(url, job), asking);
      };
      expect([route, (await ask(OTHER_JOB)).text]).toEqual([route, (await ask("job-nowhere")).text]);
    }
  });
});
