import { expect, test } from "vitest";
import { runHistory } from "../../../test/support/sync-simulator.ts";

/** 10,000 take as long as all other tests together: TOELINE_HISTORIES=10000 runs them all, every day gets the first 2,000. */
const HISTORIES = Number(process.env["TOELINE_HISTORIES"] ?? 2_000);
const BLOCK = 500;
const BLOCKS = Array.from(
  { length: Math.ceil(HISTORIES / BLOCK) },
  (_, i) => [BLOCK * i + 1001, BLOCK * (i + 1) + 1000] as const,
);

test.each(BLOCKS)("histories end with equal sets and equal states, seeds %s to %s", async (from, to) => {
  const wrong: string[] = [];
  for (let seed = from; seed <= to; seed++) {
    const outcome = await runHistory(seed);
    const isWell =
      outcome.lost === 0 &&
      outcome.falselyAcknowledged === 0 &&
      outcome.isComplete &&
      new Set(outcome.sets).size === 1 &&
      new Set(outcome.states).size === 1;
    if (!isWell) wrong.push(`seed ${seed}`);
  }
  expect(wrong).toEqual([]);
});
