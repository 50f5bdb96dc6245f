import { useSyncExternalStore } from "react";
import { attempt, attemptLater } from "../attempt.ts";
import type { Author } from "../worker/desk.ts";
import { desk } from "../worker/desk-client.ts";

/** Who writes. Unconfirmed: the office did not answer, so it is whoever was signed in here last; recording goes on. */
export type Session =
  | { readonly state: "asking" }
  | { readonly state: "signed-out" }
  /** the password was right; a code of the second factor has to follow */
  | { readonly state: "second-factor" }
  | { readonly state: "here"; readonly author: Author; readonly isConfirmed: boolean; readonly mode: Mode };

/** local: one person, on this machine. shared: people sign in. */
export type Mode = "local" | "shared";

const LAST_AUTHOR = "toeline-last-author";
/** The author on a device that has never heard from an office. */
const THIS_DEVICE: Author = { id: "this-device", name: "–" };
const OFFICE_SILENT_MS = 4_000;

const listeners = new Set<() => void>();
const held: { now: Session; isAsked: boolean } = { now: { state: "asking" }, isAsked: false };

function change(session: Session): void {
  held.now = session;
  if (session.state === "here") {
    void desk().begin(session.author);
    // only a window may ask; whether the browser has promised it stands in the settings
    void attemptLater(() => navigator.storage.persist());
  }
  for (const listener of listeners) listener();
}

/** Asks the office who is signed in. Called at the start and after signing in or out. */
export async function askWhoIsHere(): Promise<void> {
  held.isAsked = true;
  const answer = await attemptLater(() =>
    fetch("/api/1/session", {
      signal: AbortSignal.timeout(OFFICE_SILENT_MS),
      headers: { accept: "application/json" },
    }),
  );
  const read = answer.ok && answer.value.ok ? await attemptLater(() => answer.value.json()) : undefined;
  change(
    (read?.ok ? sessionOf(read.value) : undefined) ?? {
      state: "here",
      author: lastAuthor(),
      isConfirmed: false,
      mode: "shared",
    },
  );
}

/** The answer of the office, shaped: undefined if it is none that this version understands. */
function sessionOf(answer: unknown): Session | undefined {
  const { mode, person, secondFactor } = (answer ?? {}) as Readonly<Record<string, unknown>>;
  if (mode !== "local" && mode !== "shared") return undefined;
  if (secondFactor !== null && secondFactor !== undefined) return { state: "second-factor" };
  if (person === null) return { state: "signed-out" };
  const { id, name } = (person ?? {}) as Readonly<Record<string, unknown>>;
  if (typeof id !== "string" || typeof name !== "string") return undefined;
  const author = { id, name };
  attempt(() => localStorage.setItem(LAST_AUTHOR, JSON.stringify(author)));
  return { state: "here", author, isConfirmed: true, mode };
}

function lastAuthor(): Author {
  const read = attempt(() => JSON.parse(localStorage.getItem(LAST_AUTHOR) ?? "null") as Author | null);
  return (read.ok ? read.value : undefined) ?? THIS_DEVICE;
}

/** How signing in went. */
export type SignInOutcome = "signed-in" | "wrong" | "slow-down" | "no-answer";

/** Signs in at the office. The session is a cookie that no script can read. */
export const signIn = (login: string, password: string): Promise<SignInOutcome> =>
  send("/api/1/session", { login, password });

/** Shows the code of the second factor, where the office asks for one. */
export const showCode = (code: string): Promise<SignInOutcome> =>
  send("/api/1/session/second-factor", { code });

async function send(path: string, body: Readonly<Record<string, string>>): Promise<SignInOutcome> {
  const answer = await attemptLater(() =>
    fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    }),
  );
  if (!answer.ok || answer.value.status >= 500) return "no-answer";
  if (answer.value.status === 429) return "slow-down";
  if (!answer.value.ok) return "wrong";
  await askWhoIsHere();
  return "signed-in";
}

export async function signOut(): Promise<void> {
  await attemptLater(() => fetch("/api/1/session", { method: "DELETE" }));
  await askWhoIsHere();
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  if (!held.isAsked) void askWhoIsHere();
  return () => listeners.delete(listener);
};

export const useSession = (): Session => useSyncExternalStore(subscribe, () => held.now);
