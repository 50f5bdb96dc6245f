import { contract, fail, type Issue, ok, type Result } from "#core";
import {
  type Entry,
  MAX_BATCH_BYTES,
  MAX_BATCH_ENTRIES,
  type Page,
  parseJson,
  type Quarantined,
  sha256Hex,
  utf8,
} from "#records";
import { attempt } from "./attempt.ts";
import type { ArrivedText, Backend } from "./backend.ts";
import { idTaken, prepareBatch } from "./batch.ts";
import { checkBlobPart, placeOfPart } from "./blob-part.ts";
import { error } from "./issue.ts";
import { keptAsideOf } from "./kept-aside.ts";
import type { Appended, BlobHeld, BlobPart, Office, PageLimit, Store } from "./store.ts";

const ONE_MESSAGE: PageLimit = { entries: MAX_BATCH_ENTRIES, bytes: MAX_BATCH_BYTES };

/** A store over a database: what is the same for all of them. */
export function createStore(backend: Backend): Store {
  return {
    append: (job, entries, receivedAt) => append(backend, job, entries, receivedAt),
    jobs: () => attempt(() => backend.jobs()),
    readJob: async (job) => {
      const texts = await attempt(() => backend.entriesAfter(job, 0, Number.MAX_SAFE_INTEGER));
      return texts.ok ? entriesOf(texts.value.map(({ text }) => text)) : texts;
    },
    size: (job) => attempt(() => backend.size(job)),
    readIds: (job) => attempt(() => backend.ids(job)),
    readAfter: (job, cursor, limit = ONE_MESSAGE) => readAfter(backend, job, cursor, limit),
    readChain: (job, device, from, to) => readTexts(() => backend.chainTexts(job, device, from, to)),
    chains: (job) => attempt(() => backend.chains(job)),
    acknowledge: (job, office, ids, at) =>
      attempt(() => backend.acknowledge(job, nameOf(office), [...new Set(ids)], at)),
    readAcknowledged: (job, office) =>
      attempt(async () => new Set(await backend.acknowledged(job, nameOf(office)))),
    readNotSent: (job, office) => readTexts(() => backend.notSentTexts(job, nameOf(office))),
    countNotSent: (job, office) => attempt(() => backend.notSentCount(job, nameOf(office))),
    keepPulled: (job, office, place) => keepPulled(backend, job, office, place),
    readPulled: (job, office) => attempt(() => backend.pulled(job, nameOf(office))),
    readOffices: (job) => attempt(async () => (await backend.offices(job)).map(officeOf)),
    forgetOffice: async (job, office) => {
      const done = await attempt(() => backend.forgetOffice(job, nameOf(office)));
      return done.ok ? ok(true) : done;
    },
    keepAside: (job, refused, at) => keepAside(backend, job, refused, at),
    readKeptAside: (job) => attempt(() => backend.keptAside(job)),
    putBlobPart: (part) => putBlobPart(backend, part),
    blob: (hash) => attempt(() => backend.blob(hash)),
    readBlob: (hash, from = 0) => attempt(() => readBlob(backend, hash, from)),
    close: () => backend.close(),
  };
}

/** One name for each life of a server. */
const nameOf = ({ server, era }: Office): string => `${era} ${server}`;

function officeOf(name: string): Office {
  const gap = name.indexOf(" ");
  return { server: name.slice(gap + 1), era: Number(name.slice(0, gap)) };
}

async function append(
  backend: Backend,
  job: string,
  entries: readonly Entry[],
  receivedAt: string,
): Promise<Result<Appended, Issue>> {
  const { rows, refused } = prepareBatch(job, entries);
  const inserted = await attempt(() => backend.insertEntries(job, rows, receivedAt));
  if (!inserted.ok) return inserted;
  const taken = new Set(inserted.value.taken);
  const conflicting = entries.flatMap((raw, index) =>
    taken.has(raw.id) ? [{ index, raw, issue: idTaken(raw.id) }] : [],
  );
  const places = new Set(conflicting.map(({ index }) => index));
  const all = [...refused.filter(({ index }) => !places.has(index)), ...conflicting];
  const aside = await keepAside(backend, job, all, receivedAt);
  if (!aside.ok) return aside;
  return ok({
    held: rows.map((row) => row.id).filter((id) => !taken.has(id)),
    added: inserted.value.added,
    refused: all.sort((a, b) => a.index - b.index),
    size: inserted.value.size,
  });
}

async function keepPulled(
  backend: Backend,
  job: string,
  office: Office,
  place: number,
): Promise<Result<true, Issue>> {
  contract(Number.isSafeInteger(place) && place >= 0, `keepPulled: ${place} is no place in a log`);
  const kept = await attempt(() => backend.keepPulled(job, nameOf(office), place));
  return kept.ok ? ok(true) : kept;
}

async function keepAside(
  backend: Backend,
  job: string,
  refused: readonly Quarantined[],
  at: string,
): Promise<Result<number, Issue>> {
  if (refused.length === 0) return ok(0);
  const rows = await Promise.all(refused.map((one) => keptAsideOf(one, at)));
  const unique = [...new Map(rows.map((row) => [row.key, row])).values()];
  return attempt(() => backend.keepAside(job, unique));
}

async function readAfter(
  backend: Backend,
  job: string,
  cursor: number,
  limit: PageLimit,
): Promise<Result<Page, Issue>> {
  contract(Number.isSafeInteger(cursor) && cursor >= 0, `readAfter: ${cursor} is no place in a log`);
  contract(limit.entries >= 1, `readAfter: a page of ${limit.entries} entries`);
  const read = await attempt(() => backend.entriesAfter(job, cursor, limit.entries + 1));
  if (!read.ok) return read;
  const chosen = firstThatFit(read.value, limit);
  const entries = entriesOf(chosen.map(({ text }) => text));
  if (!entries.ok) return entries;
  return ok({ from: cursor, entries: entries.value, more: chosen.length < read.value.length });
}

function firstThatFit(texts: readonly ArrivedText[], limit: PageLimit): readonly ArrivedText[] {
  let bytes = 0;
  const end = texts.findIndex(({ text }, i) => {
    bytes += utf8(text).length + 1;
    return i >= limit.entries || (i > 0 && bytes > limit.bytes);
  });
  return end < 0 ? texts : texts.slice(0, end);
}

async function readTexts(call: () => Promise<readonly string[]>): Promise<Result<readonly Entry[], Issue>> {
  const texts = await attempt(call);
  return texts.ok ? entriesOf(texts.value) : texts;
}

/** What stands in the log was written from entries; a text that is no JSON any more was damaged in the database. */
function entriesOf(texts: readonly string[]): Result<readonly Entry[], Issue> {
  const entries: Entry[] = [];
  for (const text of texts) {
    const parsed = parseJson(text);
    if (!parsed.ok) return fail(error("store.entry-damaged", { found: text.slice(0, 100) }));
    entries.push(parsed.value as Entry);
  }
  return ok(entries);
}

async function putBlobPart(backend: Backend, part: BlobPart): Promise<Result<BlobHeld, Issue>> {
  const { hash, size, offset, bytes } = part;
  const checked = checkBlobPart(part);
  if (!checked.ok) return checked;
  const held = await attempt(() => backend.blob(hash));
  if (!held.ok) return held;
  const place = placeOfPart(held.value, part);
  if (!place.ok) return place;
  if (place.value === "repeat") {
    const there = await attempt(() => bytesBetween(backend, hash, offset, offset + bytes.length));
    if (!there.ok) return there;
    if (!isSame(there.value, bytes)) return fail(error("store.blob-differs", { hash, from: offset }));
  } else {
    const added = await attempt(async () => {
      if (place.value === "anew") await backend.dropBlob(hash);
      await backend.addBlobPart(part);
    });
    if (!added.ok) return added;
  }
  const now = await attempt(() => backend.blob(hash));
  if (!now.ok) return now;
  const { received, isComplete } = now.value ?? { received: 0, isComplete: false };
  return received < size || isComplete ? ok({ size, received, isComplete }) : finishBlob(backend, hash, size);
}

async function finishBlob(backend: Backend, hash: string, size: number): Promise<Result<BlobHeld, Issue>> {
  const bytes = await attempt(() => bytesBetween(backend, hash, 0, size));
  if (!bytes.ok) return bytes;
  const found = await sha256Hex(bytes.value);
  const isRight = found === hash;
  const done = await attempt(() => (isRight ? backend.completeBlob(hash) : backend.dropBlob(hash)));
  if (!done.ok) return done;
  return isRight
    ? ok({ size, received: size, isComplete: true })
    : fail(error("store.blob-hash", { hash, found }));
}

async function readBlob(
  backend: Backend,
  hash: string,
  from: number,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const held = await backend.blob(hash);
  return held?.isComplete ? bytesBetween(backend, hash, from, held.size) : undefined;
}

async function bytesBetween(
  backend: Backend,
  hash: string,
  from: number,
  to: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const joined = new Uint8Array(Math.max(0, to - from));
  for (const { offset, bytes } of await backend.blobParts(hash, from, to)) {
    const part = bytes.subarray(Math.max(0, from - offset), Math.max(0, to - offset));
    joined.set(part, Math.max(0, offset - from));
  }
  return joined;
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, i) => byte === b[i]);
