import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { blockMeans } from "./block-means.ts";

describe("blockMeans", () => {
  test("means of neighbours; what does not fill a block is left out", () => {
    expect([...blockMeans(Float64Array.of(1, 3, 5, 7, 100), 2)]).toEqual([2, 6]);
    expect([...blockMeans(Float64Array.of(1, 3, 5), 1)]).toEqual([1, 3, 5]);
    expect(blockMeans(Float64Array.of(1), 2)).toHaveLength(0);
  });

  test("loses nothing to a large offset; a missing value stays missing", () => {
    const values = Float64Array.from({ length: 1000 }, (_, i) => 2 ** 40 + (i % 2));
    expect([...blockMeans(values, 500)]).toEqual([2 ** 40 + 0.5, 2 ** 40 + 0.5]);
    expect([...blockMeans(Float64Array.of(1, Number.NaN, 3, 5), 2)]).toEqual([Number.NaN, 4]);
  });

  test("throws ContractError for a size that is no whole number", () => {
    expect(() => blockMeans(Float64Array.of(1), 0)).toThrow(ContractError);
    expect(() => blockMeans(Float64Array.of(1), 1.5)).toThrow(ContractError);
  });
});
