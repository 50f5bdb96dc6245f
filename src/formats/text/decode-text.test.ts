import { expect, test } from "vitest";
import { Finder } from "../finding/finder.ts";
import { decodeText } from "./decode-text.ts";

function decoded(bytes: Uint8Array) {
  const found = new Finder("a.csv");
  const text = decodeText(bytes, found);
  return {
    text,
    codes: found.issues.map((issue) => issue.code),
    line: found.issues[0]?.place.line,
    found: found.issues[0]?.values["found"],
  };
}
const utf8 = (text: string) => new TextEncoder().encode(text);

test("line ends of every kind become one", () => {
  expect(decoded(utf8("a\r\nb\rc\nd")).text).toBe("a\nb\nc\nd");
});

test("a byte order mark is no part of the text", () => {
  expect(decoded(utf8("\uFEFFa")).text).toBe("a");
});

test.each([
  ["alone at the start", new Uint8Array([0xb0, 10, 65]), 1, "byte 0xb0"],
  ["in the third line", new Uint8Array([65, 10, 66, 10, 0xe9, 10]), 3, "byte 0xe9"],
  [
    "behind a megabyte of letters of two bytes",
    Uint8Array.from([...utf8("é\n".repeat(400_000)), 0xff]),
    400_001,
    "byte 0xff",
  ],
  [
    "as the last byte of a piece",
    Uint8Array.from([...utf8(`${"a".repeat(65_534)}\n`), 0xff, 65]),
    2,
    "byte 0xff",
  ],
])("a byte of another code page, %s, is told with its line", (_where, bytes, line, what) => {
  const result = decoded(bytes);
  expect(result).toMatchObject({ text: undefined, codes: ["formats.encoding"], line, found: what });
});

test("a character cut off at the end of the file is told", () => {
  expect(decoded(utf8("aé").slice(0, 2)).codes).toEqual(["formats.encoding"]);
});
