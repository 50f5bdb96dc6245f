import { fail, type Issue, ok, type Result } from "#core";
import {
  type PullAnswer,
  type PullRequest,
  type PushAnswer,
  type PushRequest,
  readMessage,
  writeMessage,
} from "#records";
import { error } from "../issue.ts";
import {
  type BlobRef,
  type BlobState,
  blobStateSchema,
  blobsAnswerSchema,
  type Greeting,
  greetingSchema,
  readShaped,
} from "../messages.ts";
import { type Fetch, platformTimers, type Timers } from "../platform.ts";
import { ask, type Line, receive, type Take } from "./request.ts";

/** An office that is silent for so long is given up, milliseconds. */
export const SILENCE_MS = 30_000;

/** A device's line to an office. Every method can fail with the errors of `ask`, and with sync.answer-damaged. */
export interface OfficeClient {
  /** origin of the office */
  readonly address: string;
  greet(): Promise<Result<Greeting, Issue>>;
  push(request: PushRequest): Promise<Result<PushAnswer, Issue>>;
  /** @param digest whether the digest of all ids is wanted with the last page: the office has to work for it. */
  pull(request: PullRequest, digest: "with-digest" | "no-digest"): Promise<Result<PullAnswer, Issue>>;
  blobStates(job: string, files: readonly BlobRef[]): Promise<Result<readonly (BlobState | null)[], Issue>>;
  putBlobPart(job: string, file: BlobRef, part: SentPart): Promise<Result<BlobState, Issue>>;
  readBlob(job: string, file: BlobRef, from: number, take: Take): Promise<Result<true, Issue>>;
  /** address of the live connection of a job */
  liveAddress(job: string): string;
  /** Calls with every successful answer. @returns what ends it. */
  onAnswer(listener: () => void): () => void;
}

export interface SentPart {
  /** of the whole file, bytes */
  readonly size: number;
  readonly offset: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface OfficeClientSettings {
  /** as people type it: https://office.example */
  readonly address: string;
  /** of a program; a browser is known by its session */
  readonly token?: string | undefined;
  readonly fetch: Fetch;
  readonly timers?: Timers;
  readonly silenceMs?: number;
}

/**
 * A line to an office.
 *
 * Errors: sync.address, sync.insecure-address (a token would travel in the clear).
 */
export function createOfficeClient(settings: OfficeClientSettings): Result<OfficeClient, Issue> {
  const origin = originOf(settings);
  if (!origin.ok) return origin;
  const address = origin.value;
  const listeners = new Set<() => void>();
  const line: Line = {
    address,
    token: settings.token,
    // a browser's fetch refuses to be the method of another object
    fetch: (input, init) => settings.fetch(input, init),
    timers: settings.timers ?? platformTimers,
    silenceMs: settings.silenceMs ?? SILENCE_MS,
    onAnswer: () => {
      for (const listener of listeners) listener();
    },
  };
  return ok({
    address,
    greet: async () => {
      const answer = await ask(line, { path: "/api/1/office" });
      return answer.ok ? readShaped(answer.value, greetingSchema) : answer;
    },
    push: (request) => push(line, request),
    pull: (request, digest) => pull(line, request, digest),
    blobStates: (job, files) => blobStates(line, job, files),
    putBlobPart: (job, file, part) => putBlobPart(line, job, file, part),
    readBlob: (job, file, from, take) =>
      receive(line, { path: `${pathOf(job)}${fileOf(file)}?from=${from}` }, take),
    liveAddress: (job) => `${address.replace(/^http/, "ws")}${pathOf(job)}/live`,
    onAnswer: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  });
}

const pathOf = (job: string): string => `/api/1/jobs/${encodeURIComponent(job)}`;
const fileOf = ({ device, sequence, blob }: BlobRef): string => `/chains/${device}/${sequence}/files/${blob}`;

function originOf({ address, token }: OfficeClientSettings): Result<string, Issue> {
  const whole = /^[a-z]+:\/\//i.test(address) ? address : `https://${address}`;
  const url = URL.canParse(whole) ? new URL(whole) : undefined;
  if (
    url === undefined ||
    !["http:", "https:"].includes(url.protocol) ||
    url.pathname !== "/" ||
    url.username
  )
    return fail(error("sync.address", { found: address }));
  const isHere = ["localhost", "127.0.0.1", "[::1]"].includes(url.hostname);
  if (token !== undefined && url.protocol === "http:" && !isHere)
    return fail(error("sync.insecure-address", { address: url.origin }));
  return ok(url.origin);
}

async function push(line: Line, request: PushRequest): Promise<Result<PushAnswer, Issue>> {
  const written = writeMessage(request);
  if (!written.ok) return written;
  const path = `${pathOf(request.job)}/push`;
  const answer = await ask(line, { path, method: "POST", body: written.value });
  if (!answer.ok) return answer;
  return aboutJob(readMessage(answer.value, "toeline-push-answer/1"), answer.value, request.job);
}

async function pull(
  line: Line,
  request: PullRequest,
  digest: "with-digest" | "no-digest",
): Promise<Result<PullAnswer, Issue>> {
  const path = `${pathOf(request.job)}/pull?format=${request.format}&after=${request.after}`;
  const answer = await ask(line, { path: digest === "no-digest" ? `${path}&digest=no` : path });
  if (!answer.ok) return answer;
  return aboutJob(readMessage(answer.value, "toeline-pull-answer/1"), answer.value, request.job);
}

/** An answer about another job, from a mistaken cache on the way, is none. */
function aboutJob<M extends { readonly job: string }>(
  read: Result<M, Issue>,
  text: string,
  job: string,
): Result<M, Issue> {
  if (!read.ok) return fail(error("sync.answer-damaged", { found: text.slice(0, 100) }));
  return read.value.job === job ? read : fail(error("sync.answer-damaged", { found: read.value.job }));
}

async function blobStates(
  line: Line,
  job: string,
  files: readonly BlobRef[],
): Promise<Result<readonly (BlobState | null)[], Issue>> {
  const asked = files.map(({ device, sequence, blob }) => ({ device, sequence, blob }));
  const answer = await ask(line, {
    path: `${pathOf(job)}/files`,
    method: "POST",
    body: JSON.stringify({ format: "toeline-files/1", files: asked }),
  });
  if (!answer.ok) return answer;
  const read = readShaped(answer.value, blobsAnswerSchema);
  if (!read.ok) return read;
  if (read.value.files.length !== files.length)
    return fail(error("sync.answer-damaged", { found: `${read.value.files.length} files` }));
  return ok(read.value.files);
}

async function putBlobPart(
  line: Line,
  job: string,
  file: BlobRef,
  { size, offset, bytes }: SentPart,
): Promise<Result<BlobState, Issue>> {
  const path = `${pathOf(job)}${fileOf(file)}?size=${size}&offset=${offset}`;
  const answer = await ask(line, { path, method: "PUT", body: bytes });
  return answer.ok ? readShaped(answer.value, blobStateSchema) : answer;
}
