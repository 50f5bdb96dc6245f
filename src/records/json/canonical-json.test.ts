import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../test/published/rfc-8785/case.json" with { type: "json" };
import { sha256Hex, utf8 } from "../crypto/hash.ts";
import { canonicalJson } from "./canonical-json.ts";

const SEED = 8785;

function textOf(value: unknown): string {
  const written = canonicalJson(value);
  if (!written.ok) throw new Error(JSON.stringify(written.error));
  return written.value;
}

function numberOf(bits: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${bits}`));
  return view.getFloat64(0);
}

describe("canonicalJson", () => {
  test.each(published.vectors)("RFC 8785 test data: $name", async (vector) => {
    const text = textOf(JSON.parse(vector.input));
    expect(text).toBe(vector.canonical);
    expect(await sha256Hex(utf8(text))).toBe(vector.canonical_utf8_sha256);
  });

  test.each(published.numbers)("RFC 8785 appendix B: %s is written %s", (bits, text) => {
    expect(textOf(numberOf(bits!))).toBe(text);
  });

  test.each(published.refused)("RFC 8785 appendix B: %s is refused", (bits) => {
    expect(canonicalJson([numberOf(bits)])).toMatchObject({ error: { code: "records.number-not-finite" } });
  });

  test(`says the same however the keys were put in, and reads back as the same value (seed ${SEED})`, () => {
    const anyJson = fc.jsonValue({ maxDepth: 4, stringUnit: "binary" });
    fc.assert(
      fc.property(anyJson, (value) => {
        const written = canonicalJson(value);
        fc.pre(written.ok);
        const text = textOf(value);
        expect(textOf(reversed(value))).toBe(text);
        expect(textOf(JSON.parse(text))).toBe(text);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test.each([
    ["records.text-surrogate", { a: "x\ud800" }, "a"],
    ["records.text-surrogate", { "\udc00": 1 }, "\udc00"],
    ["records.text-null", { a: ["x", "\u0000"] }, "a[1]"],
    ["records.not-json", { a: { b: undefined } }, "a.b"],
    ["records.not-json", { a: 1n }, "a"],
    ["records.not-json", { a: new Date(0) }, "a"],
    ["records.not-json", { a: () => 1 }, "a"],
    ["records.number-not-finite", { a: [1, { b: Number.NaN }] }, "a[1].b"],
    ["records.number-not-finite", { a: -Infinity }, "a"],
    ["records.not-json", Array(2), "[0]"],
  ])("%s is told with its place", (code, value, field) => {
    expect(canonicalJson(value)).toMatchObject({ ok: false, error: { code, place: { field } } });
  });

  test("brackets without end are refused, not followed", () => {
    let deep: unknown = 1;
    for (let i = 0; i < 10_000; i++) deep = [deep];
    expect(canonicalJson(deep)).toMatchObject({ error: { code: "records.too-deep" } });
  });

  test("minus zero is zero, and a key named __proto__ is a key like any other", () => {
    expect(textOf([-0])).toBe("[0]");
    expect(textOf(JSON.parse('{"z":1,"__proto__":{"a":2}}'))).toBe('{"__proto__":{"a":2},"z":1}');
  });
});

/** The same value with the keys of every object put in the other way round. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== "object" || value === null) return value;
  const members = Object.entries(value).map(([key, one]) => [key, reversed(one)] as const);
  return Object.fromEntries(members.reverse());
}
