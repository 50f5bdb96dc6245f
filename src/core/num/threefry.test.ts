import { expect, test } from "vitest";
import published from "../../../test/published/threefry/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { threefry } from "./threefry.ts";

const words = (text: string) => Uint32Array.from(text.split(" "), (word) => Number.parseInt(word, 16));

test.each(published.vectors)("[H4] the published answer for key $key", ({ key, counter, result }) => {
  const out = new Uint32Array(4);
  threefry(words(key), words(counter), out);
  expect([...out]).toEqual([...words(result)]);
});

test("one bit of the counter changes about half of the bits", () => {
  const one = new Uint32Array(4);
  const other = new Uint32Array(4);
  threefry([1, 2, 3, 4], [5, 6, 7, 8], one);
  threefry([1, 2, 3, 4], [4, 6, 7, 8], other);
  const changed = one.reduce(
    (sum, word, i) => sum + (word ^ other[i]!).toString(2).replaceAll(/[-0]/g, "").length,
    0,
  );
  expect(changed).toBeGreaterThan(40);
  expect(changed).toBeLessThan(88);
});

test("throws ContractError unless there are four words", () => {
  expect(() => threefry([1, 2, 3], [1, 2, 3, 4], new Uint32Array(4))).toThrow(ContractError);
});
