import { describe, expect, test } from "vitest";
import { createRandom } from "#simulator";
import { JOB, Pen, signerOf, verifier } from "../../../test/support/records.ts";
import { sha256Hex, utf8 } from "../crypto/hash.ts";
import { canonicalEntry } from "../entry/canonical-entry.ts";
import type { Entry } from "../entry/entry.ts";
import { checkAgainstHead, checkHead, rootOfIds, signHead } from "../tree/tree-head.ts";
import { verifyLog } from "./verify-log.ts";

/** Cases of each kind; the log has two devices that knew of each other, and a head that somebody kept. */
const CASES = 60;

async function log(): Promise<readonly Entry[]> {
  const [a, b] = [await Pen.start(1), await Pen.start(2)];
  for (let i = 0; i < 6; i++) {
    await a.write("readings", { run: "R1", columns: { depth_m: [i, i + 0.5], tilt_x_deg: [0.1 * i, -0.2] } });
    await b.write("note", { about: "run/R1", text: `note ${i}` });
    if (i === 2) b.receive(a.entries);
    if (i === 4) a.receive(b.entries);
  }
  const all = new Map([...a.entries, ...b.entries].map((entry) => [entry.id, entry]));
  return [...all.values()];
}

const entries = await log();
const head = { size: entries.length, root: await rootOfIds(entries.map((entry) => entry.id)) };
const stranger = await signerOf(99);

async function resigned(entry: Entry, by = stranger): Promise<Entry> {
  const changed = { ...entry, device: by.publicKey };
  const text = canonicalEntry(changed);
  const bytes = utf8(text.ok ? text.value : "");
  return { ...changed, id: await sha256Hex(bytes), signature: await by.sign(bytes) };
}

type Tamper = (draw: (below: number) => number) => Promise<readonly unknown[]> | readonly unknown[];

const tampers: readonly (readonly [string, Tamper])[] = [
  [
    "one byte changed",
    (draw) => {
      const at = draw(entries.length);
      for (;;) {
        const text = JSON.stringify(entries[at]);
        const place = draw(text.length);
        const changed = text.slice(0, place) + String.fromCharCode(33 + draw(90)) + text.slice(place + 1);
        if (changed === text || !isOther(changed, entries[at])) continue;
        return entries.with(at, JSON.parse(changed) as Entry);
      }
    },
  ],
  ["an entry deleted", (draw) => entries.toSpliced(draw(entries.length), 1)],
  [
    "an entry put in",
    async (draw) => {
      const at = draw(entries.length);
      return entries.toSpliced(at, 0, await resigned(entries[draw(entries.length)]!));
    },
  ],
  ["an entry repeated", (draw) => entries.toSpliced(draw(entries.length), 0, entries[draw(entries.length)]!)],
  [
    "two entries exchanged",
    (draw) => {
      const one = draw(entries.length);
      const other = (one + 1 + draw(entries.length - 1)) % entries.length;
      return entries.with(one, entries[other]!).with(other, entries[one]!);
    },
  ],
  ["the tail cut", (draw) => entries.slice(0, draw(entries.length))],
  [
    "an entry grafted from another device",
    (draw) => {
      const [one, other] = [entries[draw(entries.length)]!, entries[draw(entries.length)]!];
      const grafted = { ...one, device: other.device === one.device ? stranger.publicKey : other.device };
      return entries.with(entries.indexOf(one), grafted);
    },
  ],
  [
    "an entry signed anew with another key",
    async (draw) => {
      const at = draw(entries.length);
      return entries.with(at, await resigned(entries[at]!));
    },
  ],
];

/** Whether the text still is JSON, and says something else than the entry. */
function isOther(text: string, entry: Entry | undefined): boolean {
  try {
    return JSON.stringify(JSON.parse(text)) !== JSON.stringify(entry);
  } catch {
    return false;
  }
}

test("the log as it was written is sound", async () => {
  const report = await verifyLog(entries, JOB, verifier);
  expect(report.firstBad).toEqual([]);
  expect(report.sound).toEqual(entries);
  expect(
    await checkAgainstHead(
      report.sound.map((entry) => entry.id),
      head,
    ),
  ).toMatchObject({ ok: true });
});

describe("whatever is done to a log is told", () => {
  test.each(tampers)("%s", async (name, tamper) => {
    for (let seed = 1; seed <= CASES; seed++) {
      const random = createRandom(`${name}/${seed}`);
      const changed = await tamper((below) => Math.floor(random.uniform() * below));
      const report = await verifyLog(changed, JOB, verifier);
      const kept = await checkAgainstHead(
        report.sound.map((entry) => entry.id),
        head,
      );
      const isTold = report.firstBad.length > 0 || !kept.ok;
      expect(isTold, `seed ${seed}`).toBe(true);
      for (const bad of report.firstBad) expect(bad.issue.code, `seed ${seed}`).toMatch(/^records\./);
    }
  });

  test("with the first bad entry by its place in the log and in the chain", async () => {
    const at = entries.findIndex((entry) => entry.sequence === 4);
    const bad = { ...entries[at]!, author: "somebody else" };
    const report = await verifyLog(entries.with(at, bad), JOB, verifier);
    expect(report.firstBad[0]).toMatchObject({
      device: bad.device,
      sequence: 4,
      issue: { code: "records.id-mismatch", place: { line: at + 1 } },
    });
  });

  test("entries of another job do not belong to the log", async () => {
    const other = await Pen.start(5, "job-2");
    const report = await verifyLog([...entries, ...other.entries], JOB, verifier);
    expect(report.firstBad).toMatchObject([{ issue: { code: "records.other-job" } }]);
  });
});

describe("a head of the log", () => {
  test("signed by the office is valid as it is and not when changed", async () => {
    const made = await signHead({ job: JOB, ...head, at: "2026-03-02T18:00:00Z" }, stranger);
    if (!made.ok) throw new Error(made.error.code);
    expect(await checkHead(made.value, verifier)).toEqual({ ok: true, value: made.value });
    const bigger = { ...made.value, size: head.size + 1 };
    expect(await checkHead(bigger, verifier)).toMatchObject({ error: { code: "records.head-signature" } });
    expect(await checkHead({}, verifier)).toMatchObject({ error: { code: "records.head-shape" } });
  });

  test("stays valid when the log grows, and tells a cut from a change", async () => {
    const ids = entries.map((entry) => entry.id);
    expect(await checkAgainstHead([...ids, "c".repeat(64)], head)).toMatchObject({ ok: true });
    expect(await checkAgainstHead(ids.slice(1), head)).toMatchObject({ error: { code: "records.head-cut" } });
    const moved = [...ids.slice(1), ids[0]!];
    expect(await checkAgainstHead(moved, head)).toMatchObject({ error: { code: "records.head-mismatch" } });
  });
});
