import { beforeAll, expect, test } from "vitest";
import { buildToeline, example, toeline } from "./run-toeline.ts";

beforeAll(buildToeline, 120_000);

// elements of every kind, among them one whose probability comes from trials and one that is not judged
const some = ["S01", "S17", "P02", "M01", "M06", "W01", "F23"];

test("[E4] results are the same to the byte for any number of workers", () => {
  const by = (workers: number) =>
    toeline(["reduce", example, "--json", "--workers", String(workers), "--seed", "4", "--only", ...some]);
  const alone = by(1);
  expect(alone.code).toBe(0);
  expect(JSON.parse(alone.stdout).elements).toHaveLength(some.length);
  for (const workers of [2, 5]) {
    const shared = by(workers);
    expect(shared.code).toBe(0);
    expect(shared.stdout === alone.stdout, `${workers} workers`).toBe(true);
  }
});
