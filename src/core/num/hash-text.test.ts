import { expect, test } from "vitest";
import { hashText } from "./hash-text.ts";

/** Text whose code units hold two bytes each. */
const ofBytes = (bytes: string): string =>
  String.fromCharCode(
    ...Array.from(
      { length: bytes.length / 2 },
      (_, i) => bytes.charCodeAt(2 * i) + 256 * bytes.charCodeAt(2 * i + 1),
    ),
  );

// FNV-1a, 32 bit: test vectors of its authors (from memory)
test.each([
  ["", 0x811c9dc5],
  ["foobar", 0xbf9cf968],
])("FNV-1a of the bytes of %o", (bytes, hash) => {
  expect(hashText(ofBytes(bytes))).toBe(hash);
});

test("names that differ in one letter, or in its high byte, go to other streams", () => {
  const names = ["tilt-zero-x run 1", "tilt-zero-y run 1", "tilt-zero-x run 2", "a", "b", "š", "a "];
  expect(new Set(names.map(hashText)).size).toBe(names.length);
});
