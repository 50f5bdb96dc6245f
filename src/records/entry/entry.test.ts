import { describe, expect, test } from "vitest";
import { ContractError } from "#core";
import { clockAt, JOB, Pen, signerOf, unwrap, verifier } from "../../../test/support/records.ts";
import { sha256Hex, utf8 } from "../crypto/hash.ts";
import { canonicalEntry } from "./canonical-entry.ts";
import type { ChainPosition } from "./chain-position.ts";
import { checkEntry } from "./check-entry.ts";
import { createEntry } from "./create-entry.ts";
import type { Entry } from "./entry.ts";

const codeOf = async (raw: unknown) => {
  const checked = await checkEntry(raw, verifier);
  return checked.ok ? "sound" : checked.error.code;
};

/** An entry with other content, and with the hash and the signature that go with it. */
async function resigned(entry: Entry, change: object, signerNumber: number): Promise<Entry> {
  const signer = await signerOf(signerNumber);
  const changed = { ...entry, ...change };
  const text = unwrap(canonicalEntry(changed));
  return { ...changed, id: await sha256Hex(utf8(text)), signature: await signer.sign(utf8(text)) };
}

describe("an entry", () => {
  test("links to the one before and is named by its hash", async () => {
    const pen = await Pen.start(1);
    const entry = await pen.set("P1", "diameter_m", 1.2);
    const [first] = pen.entries;
    expect(first).toMatchObject({ sequence: 1, previous: null, kind: "device", revision: 1 });
    expect(entry).toMatchObject({ sequence: 2, previous: first!.id, job: JOB, device: pen.device });
    expect(entry.id).toBe(await sha256Hex(utf8(unwrap(canonicalEntry(entry)))));
    expect(await codeOf(entry)).toBe("sound");
  });

  test("says once what its device has come to know of others", async () => {
    const [a, b] = [await Pen.start(1), await Pen.start(2)];
    a.receive(b.entries);
    const end = b.entries.at(-1)!;
    const told = await a.set("P1", "group", "wall");
    expect(told.seen).toEqual([{ device: b.device, sequence: 1, id: end.id }]);
    expect((await a.set("P1", "role", "S")).seen).toEqual([]);
    await b.set("P1", "role", "P");
    a.receive(b.entries);
    expect((await a.set("P2", "role", "S")).seen).toMatchObject([{ device: b.device, sequence: 2 }]);
  });

  test.each([
    ["body", { body: { element: "P1", set: { diameter_m: 1.3 } } }],
    ["author", { author: "somebody else" }],
    ["sequence", { sequence: 3 }],
    ["time", { clock: clockAt(5) }],
    ["an added field", { remark: "put in later" }],
    ["a removed link", { seen: [{ device: "a".repeat(64), sequence: 1, id: "b".repeat(64) }] }],
  ])("that was changed in %s is told", async (_what, change) => {
    const pen = await Pen.start(1);
    const entry = await pen.set("P1", "diameter_m", 1.2);
    expect(await codeOf({ ...entry, ...change })).toBe("records.id-mismatch");
    expect(await codeOf(await resigned(entry, change, 1))).toBe("sound");
    expect(await codeOf(await resigned(entry, change, 2))).toBe("records.signature-wrong");
  });

  test("in the envelope too, a field that is not known stays and is signed", async () => {
    const pen = await Pen.start(1);
    const entry = await resigned(await pen.set("P1", "group", "x"), { later: { a: 1 } }, 1);
    const checked = await checkEntry(entry, verifier);
    expect(checked).toEqual({ ok: true, value: entry });
    expect(unwrap(canonicalEntry(entry))).toContain('"later":{"a":1}');
  });

  test("whose numbers have a minus zero is kept as it was hashed", async () => {
    const pen = await Pen.start(1);
    const entry = await pen.set("P1", "easting_m", -0);
    expect(Object.is((entry.body["set"] as { easting_m: number }).easting_m, 0)).toBe(true);
  });

  test.each([
    ["records.entry-shape", { format: "toeline-entry/2" }],
    ["records.entry-shape", { device: "abc" }],
    ["records.entry-shape", { sequence: 0 }],
    ["records.entry-shape", { sequence: 1.5 }],
    ["records.entry-shape", { clock: { wall: "2026-03-02 08:00", monotonic_ms: 0, session: 1 } }],
    ["records.entry-shape", { clock: { wall: "2026-13-02T08:00:00Z", monotonic_ms: 0, session: 1 } }],
    ["records.entry-shape", { body: [1] }],
    ["records.entry-chain-start", { sequence: 1 }],
    ["records.entry-chain-start", { previous: null }],
    ["records.entry-chain-start", { sequence: 1, previous: null }],
    ["records.text-null", { author: "an\u0000na" }],
    ["records.text-surrogate", { author: "anna\ud800" }],
  ])("%s: %j", async (code, change) => {
    const pen = await Pen.start(1);
    const entry = await pen.set("P1", "group", "wall");
    expect(await codeOf({ ...entry, ...change })).toBe(code);
  });

  test.each([[undefined], [null], [3], ["text"], [[]], [{}]])("is not %j", async (raw) => {
    expect(await codeOf(raw)).toBe("records.entry-shape");
  });

  test("with brackets without end is refused, not followed", async () => {
    const pen = await Pen.start(1);
    const text = JSON.stringify({ ...(await pen.set("P1", "group", "wall")), body: { deep: "HERE" } });
    const deep = JSON.parse(text.replace('"HERE"', "[".repeat(100_000) + "]".repeat(100_000))) as unknown;
    expect(await codeOf(deep)).toBe("records.too-deep");
  });

  test("of an unknown kind is sound: it is kept for those who know it", async () => {
    const pen = await Pen.start(1);
    const entry = await resigned(
      await pen.set("P1", "group", "x"),
      { kind: "weather", body: { rain: true } },
      1,
    );
    expect(await codeOf(entry)).toBe("sound");
  });
});

describe("createEntry", () => {
  const position = async (): Promise<ChainPosition> => {
    const { publicKey } = await signerOf(1);
    return {
      job: JOB,
      device: publicKey,
      last: { sequence: 1, id: "a".repeat(64) },
      declared: {},
      held: {},
    };
  };
  const write = async (kind: string, body: Entry["body"]) => {
    const made = await createEntry(
      await position(),
      { author: "anna", kind, body },
      clockAt(0),
      await signerOf(1),
    );
    return made.ok ? "made" : made.error.map((issue) => issue.code).join();
  };

  test("refuses what the log must not hold", async () => {
    expect(await write("note", { about: "job", text: "rain" })).toBe("made");
    expect(await write("weather", { rain: true })).toBe("records.kind-unknown");
    expect(await write("note", { about: "job" })).toBe("records.body-shape");
    expect(await write("note", { about: "job", text: "a\u0000b" })).toBe("records.text-null");
    expect(await write("note", { about: "job", text: "\udfff" })).toBe("records.text-surrogate");
    const columns = { depth_m: Array.from({ length: 60_000 }, (_, i) => i + 0.5) };
    expect(await write("readings", { run: "R1", columns })).toBe("records.entry-too-large");
  });

  test("does not write in another device's name, nor begin a chain with anything but the device", async () => {
    const statement = { author: "anna", kind: "note", body: { about: "job", text: "x" } };
    const wrongSigner = createEntry(await position(), statement, clockAt(0), await signerOf(2));
    await expect(wrongSigner).rejects.toThrow(ContractError);
    const start = { ...(await position()), last: undefined };
    await expect(createEntry(start, statement, clockAt(0), await signerOf(1))).rejects.toThrow(ContractError);
  });
});
