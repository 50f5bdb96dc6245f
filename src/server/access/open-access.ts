import type { FastifyReply, FastifyRequest } from "fastify";
import { error } from "../issue.ts";
import type { Access } from "../office.ts";
import { problem } from "../problem.ts";
import type { ServerSettings } from "../settings.ts";
import type { OpenOfficeTables } from "../tables/open-office-tables.ts";
import { hasAdministrator } from "./accounts.ts";
import { personOfToken, TOKEN_PREFIX } from "./api-tokens.ts";
import type { Book } from "./book.ts";
import { readCookie } from "./cookies.ts";
import { personOfDevice, rememberDevice } from "./devices.ts";
import { linkPath, setUpInvitation } from "./links.ts";
import { beginJob, type Hindrance, hindrance, hindranceAnywhere, roleIn, rolesOf } from "./members.ts";
import { type Person, RIGHTS, type Right } from "./person.ts";
import { gives } from "./rights.ts";
import { writeEvent } from "./security-events.ts";
import { type LiveSession, sessionOf } from "./sessions.ts";

/** The one user of a server on one's own machine. Whoever can reach it can read its files anyway. */
export const LOCAL_PERSON: Person = {
  id: "local",
  name: "Local user",
  by: "local",
  isAdmin: true,
  hasSecondFactor: true,
  scopes: RIGHTS,
};

/** No job is named so, and not every database takes it. */
const UNFIT = /\p{Cc}/u;

/** What was found out about a request. */
interface Found {
  readonly person: Person | undefined;
  readonly session: LiveSession | undefined;
}

const NOBODY: Found = { person: undefined, session: undefined };
const found = new WeakMap<FastifyRequest, Found>();

/** The session of a request, also one that still waits for its second factor. */
export const sessionOfRequest = (request: FastifyRequest): LiveSession | undefined =>
  found.get(request)?.session;

/**
 * Who may do what. In local mode everything is allowed to the one user; otherwise a session or a token says who asks, and the
 * roles in the database what that person may do.
 */
export function openAccess({ db }: OpenOfficeTables, settings: ServerSettings, clock: () => Date): Access {
  const book: Book = { db, settings, clock };
  const identify = async (request: FastifyRequest): Promise<void> => {
    if (!found.has(request)) found.set(request, await findOut(book, request));
  };
  const personOf = (request: FastifyRequest): Person | undefined => found.get(request)?.person;
  const mayIn = async (person: Person, job: string, right: Right): Promise<boolean> =>
    hindrance(person, await roleIn(book, person, job), right) === undefined;

  const signedIn = async (request: FastifyRequest, reply: FastifyReply): Promise<unknown> => {
    await identify(request);
    if (personOf(request) !== undefined) return undefined;
    const isPending = sessionOfRequest(request)?.isPending === true;
    return problem(
      reply,
      401,
      isPending ? error("access.second-factor-pending") : error("access.sign-in-needed"),
    );
  };

  const needs = (right: Right) => async (request: FastifyRequest, reply: FastifyReply) => {
    await signedIn(request, reply);
    const person = personOf(request);
    if (person === undefined) return reply;
    const job = jobOf(request);
    if (job !== undefined && UNFIT.test(job)) return problem(reply, 404, error("server.not-found"));
    const role = job === undefined ? undefined : await roleIn(book, person, job);
    const isHidden = job !== undefined && hindrance(person, role, "read") !== undefined;
    const why =
      job === undefined ? await hindranceAnywhere(book, person, right) : hindrance(person, role, right);
    if (why === undefined) return undefined;
    await writeEvent(book, {
      what: "access-refused",
      who: person.id,
      address: request.ip,
      details: { right, route: request.routeOptions.url ?? "", ...(job !== undefined && { job }) },
    });
    return isHidden ? problem(reply, 404, error("server.not-found")) : refuse(reply, why, right);
  };

  return {
    identify,
    personOf,
    signedIn,
    needs,
    mayIn,
    roleIn: (person, job) => roleIn(book, person, job),
    readable: async (person, jobs) => {
      if (person.scopes !== undefined && !person.scopes.includes("read")) return [];
      if (person.by === "local" || person.isAdmin) return jobs;
      const roles = await rolesOf(book, person.id);
      return jobs.filter((job) => roles.has(job) && gives(roles.get(job)!, "read"));
    },
    begin: async (person, job) => {
      if (person.by === "local") return true;
      if ((await hindranceAnywhere(book, person, "set-up")) !== undefined) return false;
      if (!(await beginJob(book, job, person.id))) return false;
      await writeEvent(book, { what: "job-begun", who: person.id, address: "-", details: { job } });
      return true;
    },
    rememberDevice: async (person, device) => {
      if (person.by === "local") return true;
      const remembered = await rememberDevice(book, person.id, device);
      if (remembered === "added")
        await writeEvent(book, { what: "device-added", who: person.id, address: "-", details: { device } });
      return remembered !== "refused";
    },
    personOfDevice: (device) => personOfDevice(book, device),
    setUpLink: async () => {
      if (settings.mode === "local" || (await hasAdministrator(book))) return undefined;
      return linkPath(await setUpInvitation(book), "invitation");
    },
  };
}

async function findOut(book: Book, request: FastifyRequest): Promise<Found> {
  if (book.settings.mode === "local") return { person: LOCAL_PERSON, session: undefined };
  const { authorization } = request.headers;
  if (authorization !== undefined) {
    const token = /^Bearer\s+(\S+)$/i.exec(authorization)?.[1];
    if (token === undefined || !token.startsWith(TOKEN_PREFIX)) return NOBODY;
    return { person: await personOfToken(book, token), session: undefined };
  }
  const secret = readCookie(request, "session", book.settings);
  const session = secret === undefined || secret === "" ? undefined : await sessionOf(book, secret);
  return { person: session?.isPending === false ? session.person : undefined, session };
}

/** The job that a route is about: the parameter `job` of its address, never something of the body. */
function jobOf(request: FastifyRequest): string | undefined {
  const { job } = request.params as { readonly job?: unknown };
  return typeof job === "string" ? job : undefined;
}

const refuse = (reply: FastifyReply, why: Hindrance, right: Right): FastifyReply =>
  problem(
    reply,
    403,
    why === "second-factor-needed"
      ? error("access.second-factor-needed", { right })
      : error("access.not-allowed", { right }),
  );
