import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseJson } from "./parse-json.ts";

const SEED = 4711;

function readValue(text: string): unknown {
  const parsed = parseJson(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  return parsed.value.value;
}

describe("parseJson", () => {
  test(`reads whatever JSON.stringify writes, in any layout (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), fc.nat(4), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        expect(JSON.stringify(readValue(text))).toBe(JSON.stringify(JSON.parse(text)));
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test(`accepts and refuses as the standard reader does, for texts with one letter changed (seed ${SEED})`, () => {
    const base = '{"a": [1, -2.5e3, true], "b": {"c": "x\\n\\u00e9", "d": null}}';
    fc.assert(
      fc.property(fc.nat(base.length), fc.constantFrom(...'{}[]:,"\\ 01-.eEtn/'), (at, letter) => {
        const text = base.slice(0, at) + letter + base.slice(at + 1);
        const standard = accepts(text);
        const ours = parseJson(text);
        expect(ours.ok, text).toBe(standard);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  test("remembers the line of every field", () => {
    const parsed = parseJson('{\n "a": 1,\n "b": [\n  {"c": 2},\n  {\n   "c":\n   3}\n ]\n}');
    expect(parsed.ok).toBe(true);
    if (!parsed.ok) return;
    const { lineOf } = parsed.value;
    expect(["", "a", "b", "b[0].c", "b[1]", "b[1].c", "z"].map(lineOf)).toEqual([
      1,
      2,
      3,
      4,
      5,
      7,
      undefined,
    ]);
  });

  test.each([
    ['{"a": 1,}', 1, "}"],
    ['{\n"a": 1\n"b": 2}', 3, '"b": 2}'],
    ["{\n'a': 1}", 2, "'a': 1}"],
    ['["a\nb"]', 1, '"a\nb"]'],
    ["[1, 2", 1, "the end of the file"],
    ["[01]", 1, "01]"],
    ["{} {}", 1, "{}"],
    ["[NaN]", 1, "NaN]"],
    ["", 1, "the end of the file"],
  ])("%s: the mistake is in line %s", (text, line, found) => {
    const parsed = parseJson(text);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.error.line).toBe(line);
    expect(parsed.error.found).toBe(found);
    expect(parsed.error.expected.length).toBeGreaterThan(0);
  });

  test("keeps the first of two equal keys and tells the second one", () => {
    const parsed = parseJson('{"a": {"b": 1,\n"b": 2}}');
    expect(parsed.ok && parsed.value.value).toEqual({ a: { b: 1 } });
    expect(parsed.ok && parsed.value.repeatedKeys).toEqual([{ path: "a.b", line: 2 }]);
  });

  test("a key named __proto__ is a key like any other", () => {
    const value = readValue('{"__proto__": {"x": 1}}') as Record<string, unknown>;
    expect(Object.keys(value)).toEqual(["__proto__"]);
    expect(value["x"]).toBeUndefined();
  });

  test("brackets without end are refused, not followed", () => {
    expect(parseJson("[".repeat(100_000)).ok).toBe(false);
    expect(parseJson('{"a":'.repeat(100_000)).ok).toBe(false);
  });
});

/** Whether the standard reader takes the text. A key twice is no mistake to either. */
function accepts(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
