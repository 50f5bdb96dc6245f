import { expect, test } from "vitest";
import { fileNames } from "./file-names.ts";

test("keeps plain names and replaces what a disk may not take", () => {
  const names = fileNames(["P12", "P 13/a", "..", "Ä-1", ""]);
  expect([...names.values()]).toEqual(["P12", "P_13_a", "_", "Ä-1", "_-2"]);
});

test("gives every id its own file, also on a disk that does not tell capitals apart", () => {
  const names = fileNames(["a/1", "a_1", "A_1", "a:1"]);
  expect(new Set([...names.values()].map((name) => name.toLowerCase())).size).toBe(4);
});
