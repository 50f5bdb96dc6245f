import { describe, expect, test } from "vitest";
import { createRandom } from "#simulator";
import { Pen, shuffled } from "../../../test/support/records.ts";
import type { Entry } from "../entry/entry.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { thingKey } from "../kinds/kind.ts";
import { foldJob } from "./fold-job.ts";

const textOf = (entries: readonly Entry[]) => {
  const text = canonicalJson(foldJob(entries));
  if (!text.ok) throw new Error(JSON.stringify(text.error));
  return text.value;
};
const union = (...pens: readonly Pen[]) => pens.flatMap((pen) => pen.entries);
const fieldOf = (entries: readonly Entry[], element: string, field: string) =>
  foldJob(entries).things[thingKey("element", element)]?.fields[field]?.map(({ value }) => value);

/** Two to four devices that write and hear of each other by chance. */
async function history(seed: number): Promise<readonly Entry[]> {
  const random = createRandom(seed);
  const draw = (below: number) => Math.floor(random.uniform() * below);
  const pens = await Promise.all(Array.from({ length: 2 + draw(3) }, (_, i) => Pen.start(i + 1)));
  for (let step = 0; step < 25; step++) {
    const pen = pens[draw(pens.length)]!;
    const other = pens[draw(pens.length)]!;
    const act = draw(4);
    if (act === 0)
      pen.receive(shuffled(other.entries, random.uniform).slice(0, 1 + draw(other.entries.length)));
    else if (act === 1) await pen.write("note", { about: "job", text: `note ${step}` });
    else await pen.set(`P${draw(2)}`, ["group", "role"][draw(2)]!, `value ${draw(4)}`);
  }
  return [...new Map(union(...pens).map((entry) => [entry.id, entry])).values()];
}

describe("the state of a job", () => {
  test.each(Array.from({ length: 40 }, (_, i) => [`seed ${100 + i}`, 100 + i] as const))(
    "is the same for every order of arrival and every repeat, and for parts of the set too (%s)",
    async (_name, seed) => {
      const entries = await history(seed);
      const random = createRandom(`${seed}/order`);
      const part = entries.filter(() => random.uniform() < 0.8);
      const [whole, some] = [textOf(entries), textOf(part)];
      for (let round = 0; round < 5; round++) {
        expect(textOf(shuffled([...entries, ...part], random.uniform))).toBe(whole);
        expect(textOf(shuffled([...part, ...part], random.uniform))).toBe(some);
      }
    },
  );

  test("a field written by two who did not know of each other keeps both values, until one who has seen both writes it", async () => {
    const [a, b] = [await Pen.start(1), await Pen.start(2)];
    await a.set("P1", "group", "first");
    b.receive(a.entries);
    await a.set("P1", "group", "of a");
    await b.set("P1", "group", "of b");
    const both = union(a, b);
    expect(new Set(fieldOf(both, "P1", "group"))).toEqual(new Set(["of a", "of b"]));
    expect(foldJob(both).conflicts).toEqual([{ thing: "element/P1", field: "group" }]);

    await a.set("P1", "group", "of a again");
    expect(new Set(fieldOf(union(a, b), "P1", "group"))).toEqual(new Set(["of a again", "of b"]));

    b.receive(a.entries);
    await b.set("P1", "group", "agreed");
    expect(fieldOf(union(a, b), "P1", "group")).toEqual(["agreed"]);
    expect(foldJob(union(a, b)).conflicts).toEqual([]);
    expect(foldJob(union(a, b)).things["element/P1"]?.entries).toHaveLength(5);
  });

  test("different fields, or the same value, are no conflict", async () => {
    const [a, b] = [await Pen.start(1), await Pen.start(2)];
    await a.set("P1", "group", "wall");
    await b.set("P1", "group", "wall");
    await b.set("P1", "role", "S");
    const state = foldJob(union(a, b));
    expect(state.conflicts).toEqual([]);
    expect(state.things["element/P1"]?.fields["group"]?.[0]?.by).toHaveLength(2);
  });

  test("somebody in between who has seen both sides settles it, though the third has not", async () => {
    const [a, b, c] = [await Pen.start(1), await Pen.start(2), await Pen.start(3)];
    await c.set("P1", "group", "c");
    b.receive(c.entries);
    await b.set("P1", "group", "b");
    const ofB = b.entries.filter((entry) => entry.device === b.device);
    a.receive(ofB);
    await a.set("P1", "group", "a");
    expect(fieldOf(union(a, b, c), "P1", "group")).toEqual(["a"]);
  });

  test("no clock decides: the later entry counts though its device's clock is years behind", async () => {
    const [a, b] = [await Pen.start(1), await Pen.start(2)];
    await a.set("P1", "group", "early");
    b.receive(a.entries);
    const body = { element: "P1", set: { group: "late" } };
    await b.write("element", body, { wall: "2019-01-01T00:00:00Z", monotonic_ms: 5, session: 1 });
    expect(fieldOf(union(a, b), "P1", "group")).toEqual(["late"]);
  });

  test("readings set aside by one and put back by another without knowing are a conflict; the readings stay", async () => {
    const a = await Pen.start(1);
    const readings = await a.write("readings", { run: "R1", columns: { depth_m: [1, 2] } });
    const b = await Pen.start(2);
    b.receive(a.entries);
    const rows = { run: "R1", readings: readings.id, rows: [1], reason: "cable moved" };
    await a.write("set-aside", rows);
    await b.write("put-back", { ...rows, reason: "it did not" });
    const run = foldJob(union(a, b)).things["run/R1"]!;
    expect(run.fields[`row/${readings.id}/1`]).toHaveLength(2);
    expect(run.lists["readings"]).toMatchObject([{ value: { columns: { depth_m: [1, 2] } } }]);
  });

  test("null clears a field and is a value like any other", async () => {
    const a = await Pen.start(1);
    await a.set("P1", "group", "wall");
    await a.set("P1", "group", null);
    expect(fieldOf(a.entries, "P1", "group")).toEqual([null]);
  });

  test("things with odd names stay apart and none reaches into the program", async () => {
    const a = await Pen.start(1);
    await a.write("tube", { element: "a/b", tube: "c", set: { length_m: 1 } });
    await a.write("tube", { element: "a", tube: "b/c", set: { length_m: 2 } });
    await a.set("__proto__", "constructor", "x");
    const { things } = foldJob(a.entries);
    expect(Object.keys(things)).toEqual([
      `device/${a.device}`,
      "element/__proto__",
      "tube/a%2Fb/c",
      "tube/a/b%2Fc",
    ]);
    expect(things["element/__proto__"]?.fields["constructor"]).toMatchObject([{ value: "x" }]);
    expect(things["constructor"]).toBeUndefined();
  });

  test("entries that this version cannot read are named, and the rest counts", async () => {
    const a = await Pen.start(1);
    const entry = await a.set("P1", "group", "wall");
    await a.set("P1", "role", "S");
    const strange = (change: Partial<Entry>) =>
      foldJob(a.entries.map((one) => (one.id === entry.id ? { ...one, ...change } : one)));
    for (const [code, change] of [
      ["records.kind-unknown", { kind: "weather" }],
      ["records.kind-newer", { revision: 99 }],
      ["records.body-shape", { body: { element: 3 } }],
    ] as const) {
      const state = strange(change);
      expect(state.unread.map((one) => one.code)).toEqual([code]);
      expect(state.isComplete).toBe(false);
      expect(Object.keys(state.things["element/P1"]?.fields ?? {})).toEqual(["role"]);
    }
  });

  test("an empty log is a job of which nothing is known", () => {
    expect(JSON.parse(textOf([]))).toEqual({
      things: {},
      devices: {},
      unread: [],
      conflicts: [],
      isComplete: true,
    });
  });
});
