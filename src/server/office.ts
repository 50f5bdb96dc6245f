import type { FastifyReply, FastifyRequest } from "fastify";
import type { Signer } from "#records";
import type { Store } from "#store";
import type { Person, Right, Role } from "./access/person.ts";
import type { WorkQueue } from "./heavy-work/work-queue.ts";
import type { ServerSettings } from "./settings.ts";
import type { OpenOfficeTables } from "./tables/open-office-tables.ts";

/** Everything the routes of a server stand on. Made once by `openOffice`, closed once. */
export interface Office {
  readonly settings: ServerSettings;
  readonly store: Store;
  /** accounts, work and whatever else is kept beside the logs */
  readonly tables: OpenOfficeTables;
  /** name of this office in acknowledgements; the same for all its server processes */
  readonly id: string;
  /** raised with every restore from a back-up; kept outside of what is backed up */
  readonly era: number;
  /** signs the heads of the jobs' trees */
  readonly signer: Signer;
  readonly work: WorkQueue;
  readonly access: Access;
  readonly clock: () => Date;
  /** tells every open connection of the job, on all server processes, that its log has grown */
  readonly announce: (job: string) => void;
  /** calls back when a job's log has grown, on whichever process; returns the end of it */
  readonly onGrowth: (listener: (job: string) => void) => () => void;
  /** how many entries this process has added to the log, for the metrics */
  readonly entriesAppended: () => number;
  close(): Promise<void>;
}

export interface Access {
  /** A hook for every request, before all that asks who it comes from: finds that out. */
  identify(request: FastifyRequest): Promise<void>;
  /** Who asks; undefined if nobody is signed in. */
  personOf(request: FastifyRequest): Person | undefined;
  /** Role in a job; undefined for none. An administrator is "admin" in each. */
  roleIn(person: Person, job: string): Promise<Role | undefined>;
  mayIn(person: Person, job: string, right: Right): Promise<boolean>;
  /** Ids of the jobs that somebody may read, out of those given. */
  readable(person: Person, jobs: readonly string[]): Promise<readonly string[]>;
  /** A job that is new: who brings it becomes its manager. False if the person may not begin jobs. */
  begin(person: Person, job: string): Promise<boolean>;
  /**
   * A hook for a route: answers 401 or 403 as a problem, or lets the request through. The job is the route's parameter `job`.
   * A job that somebody may not read is answered like one that does not exist (404).
   */
  needs(right: Right): (request: FastifyRequest, reply: FastifyReply) => Promise<unknown>;
  /** A hook for a route that is for everybody who is signed in: answers 401 as a problem, or lets the request through. */
  signedIn(request: FastifyRequest, reply: FastifyReply): Promise<unknown>;
  /** A device with which a person works. False if it belongs to somebody else, or was revoked. */
  rememberDevice(person: Person, device: string): Promise<boolean>;
  /** Account of a device's person; undefined if nobody works with it, or it was revoked. */
  personOfDevice(device: string): Promise<string | undefined>;
  /** Path and fragment of a link with which the first administrator makes an account; undefined if there is one already. */
  setUpLink(): Promise<string | undefined>;
}
