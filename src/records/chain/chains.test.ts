import { describe, expect, test } from "vitest";
import { clockAt, JOB, Pen, signerOf, verifier } from "../../../test/support/records.ts";
import type { Entry } from "../entry/entry.ts";
import { foldJob } from "../state/fold-job.ts";
import { clockFindings } from "./clock-findings.ts";
import { verifyLog } from "./verify-log.ts";
import { walkChains } from "./walk-chains.ts";

async function chainOf(number: number, notes: number): Promise<Pen> {
  const pen = await Pen.start(number);
  for (let i = 2; i <= notes; i++) await pen.write("note", { about: "job", text: `note ${i}` });
  return pen;
}
const without = (entries: readonly Entry[], ...sequences: number[]) =>
  entries.filter((entry) => !sequences.includes(entry.sequence));

describe("the chain of a device", () => {
  test("with entries missing is followed up to them; the others wait and are counted", async () => {
    const pen = await chainOf(1, 9);
    const chain = walkChains(without(pen.entries, 4, 5, 7)).get(pen.device)!;
    expect(chain.followed.map((entry) => entry.sequence)).toEqual([1, 2, 3]);
    expect(chain.missing).toEqual([
      { from: 4, to: 5 },
      { from: 7, to: 7 },
    ]);
    expect(chain.waiting.map((entry) => entry.sequence)).toEqual([6, 8, 9]);
    expect(chain.stop).toEqual({ sequence: 4, reason: "gap", entries: [] });
    const state = foldJob(without(pen.entries, 4, 5, 7));
    expect(state.isComplete).toBe(false);
    expect(state.things["job"]!.lists["notes"]).toHaveLength(2);
    expect(foldJob(pen.entries).isComplete).toBe(true);
  });

  test("whose start is missing is not followed at all", async () => {
    const pen = await chainOf(1, 4);
    const chain = walkChains(without(pen.entries, 1)).get(pen.device)!;
    expect(chain.followed).toEqual([]);
    expect(chain.missing).toEqual([{ from: 1, to: 1 }]);
  });

  test("that was cut off shows where another device has seen more of it", async () => {
    const [a, b] = [await chainOf(1, 6), await Pen.start(2)];
    b.receive(a.entries);
    await b.write("note", { about: "job", text: "seen" });
    const cut = [...without(a.entries, 5, 6), ...b.entries.filter((entry) => entry.device === b.device)];
    const chain = walkChains(cut).get(a.device)!;
    expect(chain.highest).toBe(6);
    expect(chain.missing).toEqual([{ from: 5, to: 6 }]);
    expect(foldJob(cut).isComplete).toBe(false);
  });

  test("with two branches is followed up to the fork, and both branches are kept", async () => {
    const [one, copy] = [await chainOf(1, 3), await chainOf(1, 3)];
    const left = await one.write("note", { about: "job", text: "left" });
    const right = await copy.write("note", { about: "job", text: "right" });
    const chain = walkChains([...one.entries, ...copy.entries]).get(one.device)!;
    expect(chain.followed).toHaveLength(3);
    expect(chain.forks).toEqual([4]);
    expect(chain.stop?.reason).toBe("fork");
    expect(new Set(chain.waiting)).toEqual(new Set([left, right]));
  });

  test("goes on over a fork or a gap when a person has ruled so, and the loss stays visible", async () => {
    const [one, copy, office] = [await chainOf(1, 3), await chainOf(1, 3), await Pen.start(2)];
    const left = await one.write("note", { about: "job", text: "left" });
    await copy.write("note", { about: "job", text: "right" });
    await one.write("note", { about: "job", text: "lost" });
    const after = await one.write("note", { about: "job", text: "after" });
    const all = without([...one.entries, ...copy.entries], 5);
    const rule = (entry: Entry) =>
      office.write("continuation", {
        device: one.device,
        sequence: entry.sequence,
        entry: entry.id,
        reason: "the copy was never used",
      });
    await rule(left);
    await rule(after);
    const chain = walkChains([...all, ...office.entries]).get(one.device)!;
    expect(chain.followed.map((entry) => entry.id).slice(3)).toEqual([left.id, after.id]);
    expect(chain.passedOver).toEqual([{ from: 5, to: 5 }]);
    expect(chain.abandoned).toHaveLength(1);
    expect(foldJob([...all, ...office.entries]).isComplete).toBe(false);
  });

  test("that another device has seen otherwise is told", async () => {
    const [one, copy, witness] = [await chainOf(1, 3), await chainOf(1, 2), await Pen.start(2)];
    await copy.write("note", { about: "job", text: "another third" });
    witness.receive(copy.entries);
    await witness.write("note", { about: "job", text: "seen" });
    const log = [...one.entries, ...witness.entries.filter((entry) => entry.device === witness.device)];
    const report = await verifyLog(log, JOB, verifier);
    expect(report.firstBad).toMatchObject([
      { device: one.device, sequence: 3, issue: { code: "records.chain-contradicted" } },
    ]);
  });
});

describe("clocks", () => {
  const warnings = async (clocks: readonly Parameters<Pen["write"]>[2][]) => {
    const pen = new Pen(await signerOf(1));
    await pen.write("device", { public_key: pen.device, name: "Tablet 1" }, clockAt(0));
    for (const clock of clocks) await pen.write("note", { about: "job", text: "x" }, clock);
    return clockFindings(pen.entries).map(
      ({ code, values }) => `${code} ${values["sequence"]} ${values["found"]}`,
    );
  };

  test("that run together are nothing to speak of", async () => {
    expect(
      await warnings([clockAt(10), clockAt(20.5), { ...clockAt(5000), session: 2, monotonic_ms: 3 }]),
    ).toEqual([]);
  });

  test("a jump either way is shown, with its size", async () => {
    const ahead = { ...clockAt(3610), monotonic_ms: 10_000 };
    const back = { ...clockAt(20), monotonic_ms: 20_000 };
    expect(await warnings([ahead, back])).toEqual([
      "records.clock-jump 2 3600",
      "records.clock-jump 3 -3600",
    ]);
  });

  test("other offsets from Greenwich are no jump", async () => {
    const moved = { wall: "2026-03-02T09:00:10.000+01:00", monotonic_ms: 10_000, session: 1 };
    expect(await warnings([moved])).toEqual([]);
  });

  test("going back between two starts, running backwards, and standing off the office clock", async () => {
    const earlier = { ...clockAt(-60), monotonic_ms: 0, session: 2 };
    const slower = { ...clockAt(-55), monotonic_ms: 9000, session: 2 };
    const backwards = { ...clockAt(-50), monotonic_ms: 4000, session: 2, server_offset_ms: -180_000 };
    expect(await warnings([earlier, slower, backwards])).toEqual([
      "records.clock-backwards 2 -60",
      "records.clock-jump 3 -4",
      "records.clock-monotonic 4 -5",
      "records.clock-offset 4 -180",
    ]);
  });
});
