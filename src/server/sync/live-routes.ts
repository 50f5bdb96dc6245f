import type { FastifyRequest } from "fastify";
import type { LiveMessage } from "#sync";
import type { Person } from "../access/person.ts";
import type { AppInstance } from "../app-instance.ts";
import { jobParameter } from "./parameters.ts";
import type { SyncOffice } from "./sync-parts.ts";

/** Growth that follows at once is told in one message, milliseconds. */
const GATHERING_MS = 100;
/** A sign of life, well within the minute for which an office counts as connected. Milliseconds. */
const SIGN_OF_LIFE_MS = 25_000;
/** Then the connection is made anew, and who asks is looked at anew. Milliseconds. */
const LIFETIME_MS = 15 * 60_000;
/** "Going away" and "policy violation" (RFC 6455, section 7.4.1). */
const CLOSE = { goingAway: 1001, notAllowed: 1008 } as const;

/** What is used of a WebSocket of the frame. */
interface Socket {
  send(text: string): void;
  close(code: number, reason: string): void;
  on(event: "close", listener: () => void): unknown;
}

interface Listener {
  readonly socket: Socket;
  readonly person: Person;
}

/** Tells over WebSockets that the log of a job has grown, and by how much. It carries no entry: whoever hears it fetches. */
export function liveRoutes(app: AppInstance, office: SyncOffice): void {
  const listeners = new Map<string, Set<Listener>>();
  const due = new Map<string, NodeJS.Timeout>();
  const tell = async (job: string, to: Iterable<Listener>) => {
    const size = await office.store.size(job);
    if (!size.ok) return;
    const message: LiveMessage = { format: "toeline-live/1", job, era: office.era, size: size.value };
    const text = JSON.stringify(message);
    for (const { socket } of to) socket.send(text);
  };
  const endGrowth = office.onGrowth((job) => {
    const open = listeners.get(job);
    if (open === undefined || due.has(job)) return;
    const timer = setTimeout(() => {
      due.delete(job);
      void tell(job, open);
    }, GATHERING_MS);
    due.set(job, timer);
  });
  app.addHook("onClose", async () => {
    endGrowth();
    for (const timer of due.values()) clearTimeout(timer);
  });
  app.get(
    "/api/1/jobs/:job/live",
    {
      websocket: true,
      schema: {
        summary: "Hear when the log has grown",
        description:
          "A WebSocket. Every message is a toeline-live/1 with the number of entries; nothing needs to be sent.",
        tags: ["sync"],
        params: jobParameter,
      },
      preValidation: office.access.needs("read"),
    },
    (socket: Socket, request: FastifyRequest) => {
      const { job } = request.params as { readonly job: string };
      const person = office.access.personOf(request);
      if (person === undefined) return socket.close(CLOSE.notAllowed, "nobody is signed in");
      const listener = { socket, person };
      const open = listeners.get(job) ?? new Set<Listener>();
      listeners.set(job, open.add(listener));
      const sign = setInterval(() => void signOfLife(job, listener), SIGN_OF_LIFE_MS);
      const end = setTimeout(() => socket.close(CLOSE.goingAway, "connect anew"), LIFETIME_MS);
      socket.on("close", () => {
        clearInterval(sign);
        clearTimeout(end);
        open.delete(listener);
        if (open.size === 0 && listeners.get(job) === open) listeners.delete(job);
      });
      void tell(job, [listener]);
    },
  );

  /** Whoever was taken out of the job meanwhile hears no more of it. */
  async function signOfLife(job: string, listener: Listener): Promise<void> {
    if (await office.access.mayIn(listener.person, job, "read")) await tell(job, [listener]);
    else listener.socket.close(CLOSE.notAllowed, "not of this job any more");
  }
}
