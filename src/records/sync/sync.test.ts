import { describe, expect, test } from "vitest";
import { JOB, Pen, unwrap, verifier } from "../../../test/support/records.ts";
import { walkChains } from "../chain/walk-chains.ts";
import { utf8 } from "../crypto/hash.ts";
import type { Entry } from "../entry/entry.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { MAX_BATCH_BYTES, MAX_BATCH_ENTRIES, readMessage, writeMessage } from "./messages.ts";
import { namedBlobs } from "./named-blobs.ts";
import { startAnew, UNKNOWN_OFFICE, viewAfterPull, viewAfterPush } from "./office-view.ts";
import { nextBatch, notSent, summarizeUnsent } from "./outbox.ts";
import { answerPull, answerPush, heldEnds, receiveBatch } from "./receive.ts";
import { setDigest } from "./set-digest.ts";

const OFFICE = { job: JOB, era: 1 };

async function chainOf(notes: number, length = 10): Promise<readonly Entry[]> {
  const pen = await Pen.start(1);
  for (let i = 0; i < notes; i++) await pen.write("note", { about: "job", text: "x".repeat(length) });
  return pen.entries;
}

async function push(entries: readonly unknown[], held: readonly Entry[] = []) {
  const received = await receiveBatch(JOB, entries, verifier);
  return {
    received,
    answer: answerPush(OFFICE, received, heldEnds(walkChains([...held, ...received.sound]))),
  };
}

describe("a batch", () => {
  test("holds at most 200 entries and 256 KB, the oldest first, and every entry comes through", async () => {
    const many = await chainOf(450);
    const large = await chainOf(60, 19_000);
    for (const entries of [many, large]) {
      let acknowledged: ReadonlySet<string> = new Set();
      let batches = 0;
      for (;;) {
        const unsent = notSent(entries, acknowledged);
        const batch = nextBatch(JOB, unsent, new Map());
        if (batch === undefined) break;
        const sent = batch.entries as readonly Entry[];
        expect(sent).toEqual(unsent.slice(0, sent.length));
        expect(sent.length).toBeLessThanOrEqual(MAX_BATCH_ENTRIES);
        const bytes = sent.reduce((sum, entry) => sum + utf8(unwrap(canonicalJson(entry))).length, 0);
        expect(bytes).toBeLessThanOrEqual(MAX_BATCH_BYTES);
        acknowledged = new Set([...acknowledged, ...sent.map((entry) => entry.id)]);
        batches++;
      }
      expect(acknowledged.size).toBe(entries.length);
      expect(batches).toBeGreaterThan(1);
    }
  });

  test("what the office has refused waits until the rest is there", async () => {
    const entries = await chainOf(3);
    const refused = new Map([[entries[1]!.id, "records.id-mismatch"]]);
    expect(nextBatch(JOB, entries, refused)?.entries).toEqual([entries[0], entries[2], entries[3]]);
    expect(nextBatch(JOB, [entries[1]!], refused)?.entries).toEqual([entries[1]]);
    expect(nextBatch(JOB, [], refused)).toBeUndefined();
  });

  test("what is not sent is counted from the log", async () => {
    const entries = await chainOf(3);
    const unsent = notSent(entries, new Set([entries[0]!.id]));
    expect(summarizeUnsent(unsent)).toMatchObject({
      entries: 3,
      byKind: { note: 3 },
      oldest: entries[1]!.clock.wall,
    });
    expect(summarizeUnsent([])).toEqual({ entries: 0, bytes: 0, byKind: {}, oldest: undefined });
  });
});

describe("the office", () => {
  test("names what it holds and how far each chain goes without a gap", async () => {
    const entries = await chainOf(5);
    const [first, second, third] = await Promise.all([
      push(entries.slice(0, 2)),
      push(entries.slice(3), entries.slice(0, 2)),
      push(entries.slice(2, 3), [...entries.slice(0, 2), ...entries.slice(3)]),
    ]);
    const device = entries[0]!.device;
    expect(first.answer).toMatchObject({
      held: [entries[0]!.id, entries[1]!.id],
      contiguous: { [device]: 2 },
    });
    expect(second.answer.contiguous).toEqual({ [device]: 2 });
    expect(third.answer.contiguous).toEqual({ [device]: 6 });
  });

  test("sets one bad entry aside, as it came, and takes the others", async () => {
    const entries = await chainOf(4);
    const bad = { ...entries[2]!, author: "somebody else" };
    const rude = { ...entries[3]!, body: { about: "job", text: "a\u0000b" } };
    const { received, answer } = await push([entries[0], bad, rude, "no entry", entries[4]]);
    expect(received.sound).toEqual([entries[0], entries[4]]);
    expect(received.quarantined.map(({ raw }) => raw)).toEqual([bad, rude, "no entry"]);
    expect(answer.refused).toEqual([
      { index: 1, entry: bad.id, code: "records.id-mismatch" },
      { index: 2, entry: rude.id, code: "records.text-null" },
      { index: 3, entry: null, code: "records.entry-shape" },
    ]);
  });

  test("takes a batch twice without a second copy, and refuses entries of another job", async () => {
    const entries = await chainOf(2);
    const again = await push([...entries, ...entries], entries);
    expect(again.received.sound).toEqual(entries);
    const other = await Pen.start(2, "job-2");
    const { answer } = await push([...other.entries]);
    expect(answer.refused).toMatchObject([{ index: 0, code: "records.other-job" }]);
  });

  test("tells a device whose store was copied, and keeps both branches", async () => {
    const [one, copy] = [await Pen.start(1), await Pen.start(1)];
    await one.write("note", { about: "job", text: "left" });
    await copy.write("note", { about: "job", text: "right" });
    const { received, answer } = await push([...copy.entries], one.entries);
    expect(received.sound).toHaveLength(2);
    expect(answer.forked).toEqual([one.device]);
    expect(answer.contiguous).toEqual({ [one.device]: 1 });
  });
});

describe("what a device knows of the office", () => {
  test("comes from answers only: an id that was not in the batch says nothing", async () => {
    const entries = await chainOf(3);
    const { answer } = await push(entries);
    const view = viewAfterPush(UNKNOWN_OFFICE, answer, entries.slice(0, 2));
    expect([...view.acknowledged]).toEqual([entries[0]!.id, entries[1]!.id]);
  });

  test("a refusal goes by the place in the batch, and ends when the entry is taken after all", async () => {
    const entries = await chainOf(2);
    const { answer } = await push([entries[0], { ...entries[1]!, id: entries[0]!.id }]);
    const view = viewAfterPush(UNKNOWN_OFFICE, answer, entries.slice(0, 2));
    expect([...view.refused]).toEqual([[entries[1]!.id, "records.id-mismatch"]]);
    const after = viewAfterPush(view, (await push(entries)).answer, entries);
    expect(after.refused.size).toBe(0);
    expect(after.acknowledged.size).toBe(3);
  });

  test("is void when the office was restored, and late answers from before say nothing", async () => {
    const entries = await chainOf(2);
    const { answer } = await push(entries);
    const before = viewAfterPush(UNKNOWN_OFFICE, answer, entries);
    const restored = { ...answer, era: 2, held: [entries[0]!.id] };
    const after = viewAfterPush(before, restored, entries);
    expect(after).toMatchObject({ era: 2, cursor: 0 });
    expect([...after.acknowledged]).toEqual([entries[0]!.id]);
    expect(viewAfterPush(after, answer, entries)).toBe(after);
    expect(startAnew(after)).toEqual({ ...UNKNOWN_OFFICE, era: 2 });
  });

  test("its place moves only with a whole page that begins there", async () => {
    const entries = await chainOf(4);
    const page = (from: number, count: number, more: boolean) =>
      answerPull(OFFICE, { from, entries: entries.slice(from, from + count), more }, "d".repeat(64));
    const take = async (view: typeof UNKNOWN_OFFICE, answer: ReturnType<typeof page>) =>
      viewAfterPull(view, answer, await receiveBatch(JOB, answer.entries, verifier));
    const first = await take(UNKNOWN_OFFICE, page(0, 2, true));
    expect(first).toMatchObject({ era: 1, cursor: 2 });
    expect((await take(first, page(3, 2, false))).cursor).toBe(2);
    const damaged = page(2, 2, true);
    damaged.entries[1] = { ...entries[3]!, author: "?" };
    expect((await take(first, damaged)).cursor).toBe(2);
    const last = await take(first, page(2, 3, false));
    expect(last.cursor).toBe(5);
    expect(last.acknowledged.size).toBe(5);
    expect(page(2, 3, false).digest).toBe("d".repeat(64));
    expect(page(0, 2, true).digest).toBeNull();
  });
});

test("the files that an entry speaks of are found at any depth, each once, and nothing else", async () => {
  const [a, b] = ["a".repeat(64), "b".repeat(64)];
  const pen = await Pen.start(1);
  const photo = await pen.write("photo", { about: "job", blob: a, bytes: 5, type: "image/png", caption: b });
  const files = [{ name: "r.pdf", type: "application/pdf", blob: a }];
  const report = await pen.write("report-issued", {
    report: "R-1",
    title: "Wall",
    files: [...files, ...files, { name: "r.docx", type: "x/y", blob: b }],
    elements: [],
  });
  expect(namedBlobs(photo)).toEqual([a]);
  expect(namedBlobs(report)).toEqual([a, b]);
  expect(namedBlobs({ body: { blob: "photo.png", deep: [{ blob: null }, "blob"] } })).toEqual([]);
});

describe("messages", () => {
  test("go through text and back", async () => {
    const entries = await chainOf(2);
    const request = nextBatch(JOB, entries, new Map())!;
    const { answer } = await push(entries);
    const page = answerPull(OFFICE, { from: 0, entries, more: false }, await setDigest(["a".repeat(64)]));
    expect(readMessage(unwrap(writeMessage(request)), "toeline-push/1")).toEqual({
      ok: true,
      value: request,
    });
    expect(readMessage(unwrap(writeMessage(answer)), "toeline-push-answer/1")).toEqual({
      ok: true,
      value: answer,
    });
    expect(readMessage(unwrap(writeMessage(page)), "toeline-pull-answer/1")).toEqual({
      ok: true,
      value: page,
    });
  });

  test("cut short, of another format or too long are told, never half read", async () => {
    const text = unwrap(writeMessage(nextBatch(JOB, await chainOf(2), new Map())!));
    const codeOf = (given: string) => {
      const read = readMessage(given, "toeline-push/1");
      return read.ok ? "read" : read.error.code;
    };
    expect(codeOf(text)).toBe("read");
    for (let end = 0; end < text.length; end += 97)
      expect(codeOf(text.slice(0, end))).toBe("records.not-json-text");
    expect(codeOf(text.replace("toeline-push/1", "toeline-push/2"))).toBe("records.message-shape");
    const long = { format: "toeline-push/1", job: JOB, entries: Array(201).fill(1) };
    expect(codeOf(JSON.stringify(long))).toBe("records.message-shape");
  });

  test("the digest of a set does not depend on order or repeats", async () => {
    const [a, b] = ["a".repeat(64), "b".repeat(64)];
    expect(await setDigest([a, b])).toBe(await setDigest([b, a, b]));
    expect(await setDigest([a])).not.toBe(await setDigest([b]));
  });
});
