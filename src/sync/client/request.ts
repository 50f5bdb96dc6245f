import { fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import type { Fetch, Timers } from "../platform.ts";
import { issueOfAnswer } from "./problem-issue.ts";

/** What every request to an office goes through. */
export interface Line {
  /** origin of the office, without a slash at the end */
  readonly address: string;
  readonly token: string | undefined;
  readonly fetch: Fetch;
  readonly timers: Timers;
  /** an office that says nothing for so long is given up, milliseconds */
  readonly silenceMs: number;
  /** called with every answer that came to its end and was a success */
  readonly onAnswer: () => void;
}

export interface Asked {
  readonly path: string;
  readonly method?: "GET" | "POST" | "PUT";
  readonly body?: string | Uint8Array<ArrayBuffer>;
}

/** Takes an answer piece by piece as it comes in; a finding ends the request. */
export type Take = (piece: Uint8Array<ArrayBuffer>) => Promise<Result<true, Issue>>;

const decoder = new TextDecoder();

/**
 * Asks the office and gives its answer as a text.
 *
 * Errors: sync.no-answer, sync.silent, and those of `issueOfAnswer`.
 */
export async function ask(line: Line, asked: Asked): Promise<Result<string, Issue>> {
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  const got = await receive(line, asked, async (piece) => {
    pieces.push(piece);
    return ok(true);
  });
  return got.ok ? ok(textOf(pieces)) : got;
}

/**
 * The same, giving the pieces of the answer on as they come in. The time of silence begins anew with each, so that a large answer
 * over a slow line is not given up.
 */
export async function receive(line: Line, asked: Asked, take: Take): Promise<Result<true, Issue>> {
  const silence = watchSilence(line);
  const got = await attempt(() => exchange(line, asked, take, silence));
  silence.end();
  if (silence.isBroken()) return fail(error("sync.silent", { seconds: Math.round(line.silenceMs / 1000) }));
  if (!got.ok) return fail(error("sync.no-answer", { address: line.address, found: got.error }));
  if (got.value.ok) line.onAnswer();
  return got.value;
}

interface Silence {
  readonly signal: AbortSignal;
  /** something was heard */
  heard(): void;
  isBroken(): boolean;
  end(): void;
}

function watchSilence({ timers, silenceMs }: Line): Silence {
  const controller = new AbortController();
  let isBroken = false;
  const begin = () =>
    timers.after(silenceMs, () => {
      isBroken = true;
      controller.abort();
    });
  let end = begin();
  return {
    signal: controller.signal,
    heard: () => {
      end();
      end = begin();
    },
    isBroken: () => isBroken,
    end: () => end(),
  };
}

async function exchange(
  line: Line,
  asked: Asked,
  take: Take,
  silence: Silence,
): Promise<Result<true, Issue>> {
  // a redirection would carry readings and token elsewhere
  const response = await line.fetch(`${line.address}${asked.path}`, {
    method: asked.method ?? "GET",
    headers: headersOf(line, asked),
    body: asked.body ?? null,
    redirect: "error",
    cache: "no-store",
    credentials: "same-origin",
    signal: silence.signal,
  });
  silence.heard();
  if (!response.ok) {
    const text = await response.text();
    return fail(issueOfAnswer(response.status, text, response.headers.get("retry-after")));
  }
  const reader = response.body?.getReader();
  for (;;) {
    const next = await reader?.read();
    if (next === undefined || next.done) return ok(true);
    silence.heard();
    const taken = await take(next.value);
    if (taken.ok) continue;
    await reader?.cancel();
    return taken;
  }
}

function headersOf({ token }: Line, { body }: Asked): Record<string, string> {
  return {
    ...(token === undefined ? {} : { authorization: `Bearer ${token}` }),
    ...(body === undefined
      ? {}
      : { "content-type": typeof body === "string" ? "application/json" : "application/octet-stream" }),
  };
}

function textOf(pieces: readonly Uint8Array<ArrayBuffer>[]): string {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return decoder.decode(whole);
}
