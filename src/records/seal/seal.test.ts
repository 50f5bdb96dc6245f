import { describe, expect, test } from "vitest";
import { JOB, Pen, signerOf, unwrap, verifier } from "../../../test/support/records.ts";
import { walkChains } from "../chain/walk-chains.ts";
import type { Entry } from "../entry/entry.ts";
import type { JsonObject } from "../json/json-value.ts";
import { foldChains, foldJob } from "../state/fold-job.ts";
import { checkSeal, makeSeal } from "./seal.ts";

const request = {
  job: JOB,
  about: "run/R1",
  meaning: "taken by",
  person: "anna",
  name: "Anna Muster",
  at: "2026-03-02T10:40:00+01:00",
};

async function sealedRun() {
  const pen = await Pen.start(1);
  const person = await signerOf(77);
  await pen.write("person", { person: "anna", name: "Anna Muster", public_key: person.publicKey });
  await pen.write("readings", { run: "R1", columns: { depth_m: [1, 2] } });
  await pen.write("run-closed", { run: "R1", outcome: "complete", rows: 2 });
  const seal = unwrap(await makeSeal(request, walkChains(pen.entries), person));
  return { pen, seal };
}

async function verdictOn(seal: unknown, entries: readonly Entry[]): Promise<string> {
  const chains = walkChains(entries);
  const checked = await checkSeal(seal, chains, foldChains(chains), verifier);
  return checked.ok ? "valid" : checked.error.code;
}

describe("a person's signature", () => {
  test("covers what is known about the run and stays valid when more is written", async () => {
    const { pen, seal } = await sealedRun();
    expect(seal.statement.covers).toMatchObject({ count: 2, up_to: { [pen.device]: 4 } });
    expect(await verdictOn(seal, pen.entries)).toBe("valid");
    await pen.write("sign-off", { seal: seal as unknown as JsonObject });
    await pen.write("note", { about: "run/R1", text: "water rose overnight" });
    expect(await verdictOn(seal, pen.entries)).toBe("valid");
    const kept = foldJob(pen.entries).things["run/R1"]!.lists["seals"]!;
    expect(await verdictOn(kept[0]!.value, pen.entries)).toBe("valid");
  });

  test("does not pass when changed, moved to another person, or made with a key nobody announced", async () => {
    const { pen, seal } = await sealedRun();
    const changed = { ...seal, statement: { ...seal.statement, meaning: "approved by" } };
    expect(await verdictOn(changed, pen.entries)).toBe("records.seal-signature");
    const stranger = unwrap(await makeSeal(request, walkChains(pen.entries), await signerOf(78)));
    expect(await verdictOn(stranger, pen.entries)).toBe("records.seal-key");
    expect(await verdictOn({ ...seal, signature: "x" }, pen.entries)).toBe("records.seal-shape");
  });

  test("tells entries that are missing from entries that are others", async () => {
    const { pen, seal } = await sealedRun();
    expect(await verdictOn(seal, pen.entries.slice(0, 3))).toBe("records.seal-entries-missing");
    const other = await Pen.start(1);
    await other.write("person", { person: "anna", name: "Anna Muster", public_key: seal.public_key });
    await other.write("readings", { run: "R1", columns: { depth_m: [1, 2.5] } });
    await other.write("run-closed", { run: "R1", outcome: "complete", rows: 2 });
    expect(await verdictOn(seal, other.entries)).toBe("records.seal-broken");
  });

  test("needs something to sign for", async () => {
    const made = await makeSeal({ ...request, about: "run/R9" }, walkChains([]), await signerOf(77));
    expect(made).toMatchObject({ ok: false, error: { code: "records.seal-nothing" } });
  });
});
