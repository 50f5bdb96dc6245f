import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { type Entry, sha256Hex, summarizeUnsent, walkChains } from "#records";
import { createRandom } from "#simulator";
import type { Store } from "#store";
import { JOB, Pen, shuffled, unwrap } from "../support/records.ts";

const AT = "2026-03-02T09:00:00.000Z";
const OFFICE = { server: "https://office.example", era: 1 };
const SEED = 20260302;

/** How a test gets at stores of one kind. */
export interface StoreFactory {
  /** an empty store */
  create(): Promise<Store>;
  /** the same store again, after it was closed; undefined if nothing outlasts the program */
  reopen?(): Promise<Store>;
}

/** What every store must do, whatever it keeps its entries in. */
export function storeSuite(name: string, factory: StoreFactory): void {
  describe(name, () => {
    let store: Store;
    let pens: { readonly a: Pen; readonly b: Pen };

    beforeAll(async () => {
      const [a, b] = [await Pen.start(1), await Pen.start(2)];
      for (let i = 1; i <= 6; i++) await a.set("P1", "diameter_m", 1 + i / 10);
      for (let i = 1; i <= 3; i++) await b.set("P2", "group", `wall ${i}`);
      pens = { a, b };
    });
    beforeEach(async () => {
      store = await factory.create();
    });
    afterEach(() => store.close());

    const append = async (entries: readonly Entry[], job = JOB) =>
      unwrap(await store.append(job, entries, AT));
    const idsOf = (entries: readonly Entry[]) => entries.map((entry) => entry.id);

    describe("the log", () => {
      test("is empty at first", async () => {
        expect(unwrap(await store.jobs())).toEqual([]);
        expect(unwrap(await store.readJob(JOB))).toEqual([]);
        expect(unwrap(await store.size(JOB))).toBe(0);
        expect(unwrap(await store.chains(JOB))).toEqual([]);
        expect(unwrap(await store.readAfter(JOB, 0))).toEqual({ from: 0, entries: [], more: false });
      });

      test("gives back what was appended, to the last character, in the order of arrival", async () => {
        const { a, b } = pens;
        const first = await append(b.entries);
        expect(first).toEqual({ held: idsOf(b.entries), added: 4, refused: [], size: 4 });
        expect(await append(a.entries)).toMatchObject({ added: 7, size: 11 });
        const all = [...b.entries, ...a.entries];
        expect(unwrap(await store.readJob(JOB))).toEqual(all);
        expect(unwrap(await store.readIds(JOB))).toEqual(idsOf(all));
        expect(unwrap(await store.size(JOB))).toBe(11);
        expect(unwrap(await store.jobs())).toEqual([JOB]);
      });

      test("an empty batch is no job", async () => {
        expect(await append([])).toEqual({ held: [], added: 0, refused: [], size: 0 });
        expect(unwrap(await store.jobs())).toEqual([]);
      });

      test("the same entries again change nothing, whole or in part, in one batch or in several", async () => {
        const { entries } = pens.a;
        await append(entries);
        const again = await append(entries);
        expect(again).toEqual({ held: idsOf(entries), added: 0, refused: [], size: 7 });
        const mixed = await append([entries[3]!, ...pens.b.entries, entries[3]!, pens.b.entries[0]!]);
        expect(mixed).toMatchObject({ added: 4, size: 11, refused: [] });
        expect(mixed.held).toEqual([entries[3]!.id, ...idsOf(pens.b.entries)]);
        expect(unwrap(await store.readJob(JOB))).toEqual([...entries, ...pens.b.entries]);
      });

      test(`appends at the same time give every entry one place, seed ${SEED}`, async () => {
        const all = [...pens.a.entries, ...pens.b.entries];
        const { uniform } = createRandom(SEED);
        const senders = Array.from({ length: 6 }, () => shuffled(all, uniform));
        const batches = senders.flatMap((sent) => [sent.slice(0, 5), sent.slice(5)]);
        const answers = await Promise.all(batches.map((batch) => append(batch)));
        expect(answers.reduce((sum, { added }) => sum + added, 0)).toBe(all.length);
        const ids = unwrap(await store.readIds(JOB));
        expect(ids).toHaveLength(all.length);
        expect(new Set(ids)).toEqual(new Set(idsOf(all)));
        const pages = unwrap(await store.readAfter(JOB, 4));
        expect(idsOf(pages.entries)).toEqual(ids.slice(4));
      });

      test("jobs do not see each other", async () => {
        const other = await Pen.start(1, "job-0");
        await append(pens.a.entries);
        await append(other.entries, "job-0");
        expect(unwrap(await store.jobs())).toEqual(["job-0", JOB]);
        expect(unwrap(await store.readJob("job-0"))).toEqual(other.entries);
        expect(unwrap(await store.readJob(JOB))).toEqual(pens.a.entries);
        expect(unwrap(await store.chains("job-0"))).toHaveLength(1);
      });
    });

    describe("pages", () => {
      test("follow each other by place until nothing is left", async () => {
        const { entries } = pens.a;
        await append(entries);
        const read: Entry[] = [];
        for (let cursor = 0, more = true; more; ) {
          const page = unwrap(await store.readAfter(JOB, cursor, { entries: 3, bytes: 1e6 }));
          expect(page.from).toBe(cursor);
          expect(page.entries.length).toBeLessThanOrEqual(3);
          read.push(...page.entries);
          cursor += page.entries.length;
          more = page.more;
        }
        expect(read).toEqual(entries);
        // what comes later comes after the place that was read to
        await append(pens.b.entries);
        const rest = unwrap(await store.readAfter(JOB, entries.length));
        expect(rest).toEqual({ from: entries.length, entries: pens.b.entries, more: false });
      });

      test("hold as many bytes as asked for, but at least one entry", async () => {
        await append(pens.a.entries);
        const one = unwrap(await store.readAfter(JOB, 0, { entries: 200, bytes: 1 }));
        expect(one).toEqual({ from: 0, entries: pens.a.entries.slice(0, 1), more: true });
        const bytes = 2 * JSON.stringify(pens.a.entries[1]).length + 100;
        const few = unwrap(await store.readAfter(JOB, 1, { entries: 200, bytes }));
        expect(few).toEqual({ from: 1, entries: pens.a.entries.slice(1, 3), more: true });
      });
    });

    describe("chains", () => {
      test("can be read by device and sequence, both ends included", async () => {
        const { a, b } = pens;
        await append([...a.entries].reverse());
        await append(b.entries);
        expect(unwrap(await store.readChain(JOB, a.device, 3, 5))).toEqual(a.entries.slice(2, 5));
        expect(unwrap(await store.readChain(JOB, a.device, 6, 100))).toEqual(a.entries.slice(5));
        expect(unwrap(await store.readChain(JOB, b.device, 1, 1))).toEqual(b.entries.slice(0, 1));
        expect(unwrap(await store.readChain("job-0", a.device, 1, 9))).toEqual([]);
      });

      test("say up to where no number is missing, and what is the highest", async () => {
        const { a, b } = pens;
        await append(a.entries.filter((entry) => entry.sequence !== 4));
        await append(b.entries.slice(1));
        const [ofA, ofB] = [a, b].map((pen) => ({ device: pen.device, heads: [pen.entries.at(-1)!.id] }));
        const held = [
          { ...ofA!, entries: 6, contiguous: 3, highest: 7 },
          { ...ofB!, entries: 3, contiguous: 0, highest: 4 },
        ].sort((x, y) => (x.device < y.device ? -1 : 1));
        expect(unwrap(await store.chains(JOB))).toEqual(held);
        await append([a.entries[3]!, b.entries[0]!]);
        const filled = unwrap(await store.chains(JOB));
        expect(new Map(filled.map((chain) => [chain.device, chain.contiguous]))).toEqual(
          new Map([
            [a.device, 7],
            [b.device, 4],
          ]),
        );
      });

      test("both branches of a fork are kept and shown", async () => {
        const [first, copy] = [await Pen.start(3), await Pen.start(3)];
        const one = await first.set("P1", "group", "wall");
        const two = await copy.set("P1", "group", "corner");
        const appended = await append([...first.entries, ...copy.entries]);
        expect(appended).toMatchObject({ added: 3, refused: [] });
        const branches = [one, two].sort((x, y) => (x.id < y.id ? -1 : 1));
        expect(unwrap(await store.readChain(JOB, first.device, 2, 2))).toEqual(branches);
        const chain = { device: first.device, entries: 3, contiguous: 2, highest: 2, heads: idsOf(branches) };
        expect(unwrap(await store.chains(JOB))).toEqual([chain]);
        expect(walkChains(unwrap(await store.readJob(JOB))).get(first.device)?.forks).toEqual([2]);
      });
    });

    describe("what cannot be taken", () => {
      test("the same id with other bytes is kept aside, and what is held stays", async () => {
        const { entries } = pens.a;
        await append(entries.slice(0, 3));
        const forged = { ...entries[1]!, body: { element: "P1", set: { diameter_m: 9 } } };
        const answer = await append([forged, entries[3]!]);
        expect(answer.held).toEqual([entries[3]!.id]);
        expect(answer.refused.map(({ index, issue }) => [index, issue.code])).toEqual([
          [0, "store.id-taken"],
        ]);
        expect(unwrap(await store.readJob(JOB))).toEqual(entries.slice(0, 4));
        const [aside] = unwrap(await store.readKeptAside(JOB));
        expect(JSON.parse(aside!.text)).toEqual(forged);
        expect(aside).toMatchObject({ at: AT, issue: { code: "store.id-taken" } });
      });

      test("so is one of two in the same batch, and a second try is kept once", async () => {
        const { entries } = pens.a;
        const forged = { ...entries[1]!, author: "somebody else" };
        for (const _ of [1, 2]) {
          const answer = await append([entries[0]!, entries[1]!, forged]);
          expect(answer.held).toEqual(idsOf(entries.slice(0, 2)));
          expect(answer.refused.map(({ index }) => index)).toEqual([2]);
        }
        expect(unwrap(await store.readJob(JOB))).toEqual(entries.slice(0, 2));
        expect(unwrap(await store.readKeptAside(JOB))).toHaveLength(1);
      });

      test.each([
        ["a number that is not finite", { depth_m: Number.NaN }, "records.number-not-finite"],
        ["an endless number", { depth_m: Number.POSITIVE_INFINITY }, "records.number-not-finite"],
        ["the character U+0000", { remark: "a\u0000b" }, "records.text-null"],
        ["half a character", { remark: "\ud83d" }, "records.text-surrogate"],
      ])("%s stops before the database, and does not stop the others", async (_what, body, code) => {
        const { entries } = pens.a;
        const bad = { ...entries[1]!, body };
        const answer = await append([entries[0]!, bad, entries[2]!]);
        expect(answer.held).toEqual([entries[0]!.id, entries[2]!.id]);
        expect(answer.refused.map(({ issue }) => issue.code)).toEqual([code]);
        const [aside] = unwrap(await store.readKeptAside(JOB));
        expect(aside?.issue.code).toBe(code);
        expect(aside?.text).toContain(bad.id);
      });

      test("nor an entry of another job", async () => {
        const answer = await append(pens.a.entries.slice(0, 1), "job-0");
        expect(answer).toMatchObject({ held: [], added: 0, size: 0 });
        expect(answer.refused.map(({ issue }) => issue.code)).toEqual(["records.other-job"]);
        expect(unwrap(await store.jobs())).toEqual([]);
        expect(unwrap(await store.readKeptAside(JOB))).toEqual([]);
        expect(unwrap(await store.readKeptAside("job-0"))).toHaveLength(1);
      });

      test("what was refused before is kept aside as it came, once", async () => {
        const issue = {
          code: "records.id-mismatch",
          severity: "error",
          place: {},
          values: { n: 1 },
        } as const;
        const refused = [null, 7, "text \u0000", [{ id: 1 }]].map((raw, index) => ({ index, raw, issue }));
        expect(unwrap(await store.keepAside(JOB, refused, AT))).toBe(4);
        expect(unwrap(await store.keepAside(JOB, refused, "2026-03-02T10:00:00.000Z"))).toBe(0);
        const kept = unwrap(await store.readKeptAside(JOB));
        expect(
          kept
            .map(({ text }) => JSON.parse(text))
            .map((raw) => JSON.stringify(raw))
            .sort(),
        ).toEqual(refused.map(({ raw }) => JSON.stringify(raw)).sort());
        expect(kept.map(({ key }) => key)).toEqual(kept.map(({ key }) => key).sort());
        for (const { at, issue: of } of kept) expect([at, of]).toEqual([AT, issue]);
      });
    });

    describe("not sent", () => {
      test("is the log without what the office has named", async () => {
        const { entries } = pens.a;
        await append(entries);
        expect(unwrap(await store.countNotSent(JOB, OFFICE))).toBe(7);
        const named = idsOf(entries.slice(2, 5));
        expect(unwrap(await store.acknowledge(JOB, OFFICE, named, AT))).toBe(3);
        expect(unwrap(await store.acknowledge(JOB, OFFICE, named, AT))).toBe(0);
        const unsent = [...entries.slice(0, 2), ...entries.slice(5)];
        expect(unwrap(await store.readNotSent(JOB, OFFICE))).toEqual(unsent);
        expect(unwrap(await store.countNotSent(JOB, OFFICE))).toBe(4);
        expect(unwrap(await store.readAcknowledged(JOB, OFFICE))).toEqual(new Set(named));
        expect(summarizeUnsent(unsent).entries).toBe(4);
        // what is written after that is not sent, whatever was acknowledged before
        await append(pens.b.entries);
        expect(unwrap(await store.readNotSent(JOB, OFFICE))).toEqual([...unsent, ...pens.b.entries]);
      });

      test("an id that the log does not hold is no acknowledgement, not even when the entry comes later", async () => {
        const { entries } = pens.a;
        await append(entries.slice(0, 2));
        const ids = [...idsOf(entries.slice(1, 4)), "f".repeat(64)];
        expect(unwrap(await store.acknowledge(JOB, OFFICE, ids, AT))).toBe(1);
        await append(entries.slice(2));
        expect(unwrap(await store.countNotSent(JOB, OFFICE))).toBe(6);
      });

      test("one office, or one life of it, does not speak for another", async () => {
        const { entries } = pens.a;
        await append(entries);
        unwrap(await store.acknowledge(JOB, OFFICE, idsOf(entries), AT));
        expect(unwrap(await store.countNotSent(JOB, OFFICE))).toBe(0);
        expect(unwrap(await store.countNotSent(JOB, { ...OFFICE, era: 2 }))).toBe(7);
        expect(unwrap(await store.countNotSent(JOB, { ...OFFICE, server: "https://b.example" }))).toBe(7);
      });

      test("an entry changed on the way to the store does not count as the one that was sent", async () => {
        const { entries } = pens.a;
        await append(entries.slice(0, 1));
        unwrap(await store.acknowledge(JOB, OFFICE, idsOf(entries), AT));
        expect(unwrap(await store.readNotSent(JOB, OFFICE))).toEqual([]);
        await append(entries.slice(0, 1).map((entry) => ({ ...entry, author: "somebody else" })));
        expect(unwrap(await store.readNotSent(JOB, OFFICE))).toEqual([]);
        expect(unwrap(await store.readJob(JOB))).toEqual(entries.slice(0, 1));
      });
    });

    test("how far an office's log was taken over is kept for each life of it, and never goes back", async () => {
      expect(unwrap(await store.readPulled(JOB, OFFICE))).toBe(0);
      for (const place of [200, 400, 399]) unwrap(await store.keepPulled(JOB, OFFICE, place));
      expect(unwrap(await store.readPulled(JOB, OFFICE))).toBe(400);
      expect(unwrap(await store.readPulled(JOB, { ...OFFICE, era: 2 }))).toBe(0);
      expect(unwrap(await store.readPulled("job-0", OFFICE))).toBe(0);
      expect(unwrap(await store.jobs())).toEqual([]);
      unwrap(await store.keepPulled(JOB, { server: "https://b.example 7", era: 0 }, 0));
      expect(unwrap(await store.readOffices(JOB))).toEqual([
        { server: "https://b.example 7", era: 0 },
        OFFICE,
      ]);
      expect(unwrap(await store.readOffices("job-0"))).toEqual([]);
    });

    test("what an office was believed to hold can be forgotten, for one job and one life of it; the log stays", async () => {
      const { entries } = pens.a;
      const other = await Pen.start(1, "job-0");
      const before = { ...OFFICE, era: 0 };
      await append(entries);
      await append(other.entries, "job-0");
      for (const office of [OFFICE, before]) {
        unwrap(await store.acknowledge(JOB, office, idsOf(entries), AT));
        unwrap(await store.acknowledge("job-0", office, idsOf(other.entries), AT));
        for (const job of [JOB, "job-0"]) unwrap(await store.keepPulled(job, office, 5));
      }
      unwrap(await store.forgetOffice(JOB, OFFICE));
      expect(unwrap(await store.countNotSent(JOB, OFFICE))).toBe(entries.length);
      expect(unwrap(await store.readPulled(JOB, OFFICE))).toBe(0);
      expect(unwrap(await store.readJob(JOB))).toEqual(entries);
      expect(unwrap(await store.countNotSent(JOB, before))).toBe(0);
      expect(unwrap(await store.readPulled(JOB, before))).toBe(5);
      expect(unwrap(await store.countNotSent("job-0", OFFICE))).toBe(0);
      expect(unwrap(await store.readPulled("job-0", OFFICE))).toBe(5);
      // it can be learned anew
      expect(unwrap(await store.acknowledge(JOB, OFFICE, idsOf(entries), AT))).toBe(entries.length);
    });

    describe("blobs", () => {
      const PART = 1000;
      const bytes = Uint8Array.from({ length: 2500 }, (_, i) => (i * 7919) % 251);
      const partAt = async (offset: number, of = bytes) => ({
        hash: await sha256Hex(of),
        size: of.length,
        offset,
        bytes: of.slice(offset, offset + PART),
      });
      const codeOf = async (part: Parameters<Store["putBlobPart"]>[0]) => {
        const put = await store.putBlobPart(part);
        return put.ok ? "taken" : put.error.code;
      };

      test("come in parts, tell how far they are, and are there when the hash fits", async () => {
        const { hash } = await partAt(0);
        expect(unwrap(await store.blob(hash))).toBeUndefined();
        expect(unwrap(await store.putBlobPart(await partAt(0)))).toEqual({
          size: 2500,
          received: 1000,
          isComplete: false,
        });
        expect(unwrap(await store.readBlob(hash))).toBeUndefined();
        unwrap(await store.putBlobPart(await partAt(1000)));
        expect(unwrap(await store.blob(hash))).toEqual({ size: 2500, received: 2000, isComplete: false });
        const done = { size: 2500, received: 2500, isComplete: true };
        expect(unwrap(await store.putBlobPart(await partAt(2000)))).toEqual(done);
        expect(unwrap(await store.blob(hash))).toEqual(done);
        expect(unwrap(await store.readBlob(hash))).toEqual(bytes);
        expect(unwrap(await store.readBlob(hash, 1999))).toEqual(bytes.slice(1999));
      });

      test("a part that is held already changes nothing, before and after the last one", async () => {
        for (const offset of [0, 0, 1000, 0, 2000, 1000, 2000])
          expect(await codeOf(await partAt(offset))).toBe("taken");
        expect(unwrap(await store.readBlob((await partAt(0)).hash))).toEqual(bytes);
      });

      test("the same part twice at once is taken once", async () => {
        const part = await partAt(0);
        await Promise.all([store.putBlobPart(part), store.putBlobPart(part)]);
        for (const offset of [1000, 2000]) unwrap(await store.putBlobPart(await partAt(offset)));
        expect(unwrap(await store.readBlob(part.hash))).toEqual(bytes);
      });

      test("a part out of its order is refused, with the place to go on from", async () => {
        unwrap(await store.putBlobPart(await partAt(0)));
        const put = await store.putBlobPart(await partAt(2000));
        expect(put.ok ? undefined : put.error).toMatchObject({
          code: "store.blob-offset",
          values: { found: 2000, expected: 1000 },
        });
      });

      test("other bytes for a part that is held are refused, and what is held stays", async () => {
        const part = await partAt(0);
        unwrap(await store.putBlobPart(part));
        expect(await codeOf({ ...part, bytes: part.bytes.map((byte) => 255 - byte) })).toBe(
          "store.blob-differs",
        );
        for (const offset of [1000, 2000]) unwrap(await store.putBlobPart(await partAt(offset)));
        expect(unwrap(await store.readBlob(part.hash))).toEqual(bytes);
      });

      test("a blob that does not fit its name is let go, and can be sent again", async () => {
        const { hash } = await partAt(0);
        for (const offset of [0, 1000]) unwrap(await store.putBlobPart(await partAt(offset)));
        const last = await partAt(2000);
        expect(await codeOf({ ...last, bytes: last.bytes.map((byte) => byte ^ 1) })).toBe("store.blob-hash");
        expect(unwrap(await store.blob(hash))).toBeUndefined();
        for (const offset of [0, 1000, 2000]) unwrap(await store.putBlobPart(await partAt(offset)));
        expect(unwrap(await store.readBlob(hash))).toEqual(bytes);
      });

      test("one begun with a wrong size can be begun anew; one that is complete cannot", async () => {
        unwrap(await store.putBlobPart({ ...(await partAt(0)), size: 9000 }));
        for (const offset of [0, 1000, 2000]) unwrap(await store.putBlobPart(await partAt(offset)));
        const { hash } = await partAt(0);
        expect(unwrap(await store.readBlob(hash))).toEqual(bytes);
        expect(await codeOf({ ...(await partAt(0)), size: 9000 })).toBe("store.blob-size-changed");
        expect(unwrap(await store.readBlob(hash))).toEqual(bytes);
      });

      test("names, sizes and parts that cannot be are refused", async () => {
        const part = await partAt(0);
        expect(await codeOf({ ...part, hash: "photo.jpg" })).toBe("store.blob-name");
        expect(await codeOf({ ...part, size: Number.NaN })).toBe("store.blob-size");
        expect(await codeOf({ ...part, size: 999 })).toBe("store.blob-part");
        expect(await codeOf({ ...part, offset: -1 })).toBe("store.blob-part");
        expect(await codeOf({ ...part, bytes: new Uint8Array(0) })).toBe("store.blob-part");
        unwrap(await store.putBlobPart(part));
        const next = await partAt(1000);
        expect(await codeOf({ ...next, size: 2600 })).toBe("store.blob-size-changed");
      });
    });

    const { reopen } = factory;
    if (reopen !== undefined)
      test("everything is there after closing and opening again", async () => {
        const { entries } = pens.a;
        await append(entries);
        await append([{ ...entries[0]!, author: "somebody else" }]);
        unwrap(await store.acknowledge(JOB, OFFICE, idsOf(entries.slice(0, 5)), AT));
        const bytes = Uint8Array.of(1, 2, 3, 250);
        const hash = await sha256Hex(bytes);
        unwrap(await store.putBlobPart({ hash, size: 4, offset: 0, bytes }));
        unwrap(await store.keepPulled(JOB, OFFICE, 12));
        await store.close();
        store = await reopen();
        expect(unwrap(await store.readPulled(JOB, OFFICE))).toBe(12);
        expect(unwrap(await store.readJob(JOB))).toEqual(entries);
        expect(unwrap(await store.countNotSent(JOB, OFFICE))).toBe(2);
        expect(unwrap(await store.readKeptAside(JOB))).toHaveLength(1);
        expect(unwrap(await store.readBlob(hash))).toEqual(bytes);
        expect(await append(pens.b.entries)).toMatchObject({ added: 4, size: 11 });
      });
  });
}
