import { expect, test } from "vitest";
import { runHistory } from "../../../test/support/sync-simulator.ts";

const BLOCKS = Array.from({ length: 20 }, (_, i) => [500 * i + 1001, 500 * i + 1500] as const);

test.each(BLOCKS)(
  "10,000 histories end with equal sets and equal states, seeds %s to %s",
  async (from, to) => {
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
  },
);
