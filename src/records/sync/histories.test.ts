import { expect, test } from "vitest";
import { runHistory } from "../../../test/support/sync-simulator.ts";

/** In blocks, so that a failing seed is soon found. */
const BLOCKS = Array.from({ length: 6 }, (_, i) => [50 * i + 1, 50 * i + 50] as const);

test.each(BLOCKS)(
  "nothing is lost on a bad network and all end with the same entries and the same state, seeds %s to %s",
  async (from, to) => {
    let written = 0;
    let quarantined = 0;
    for (let seed = from; seed <= to; seed++) {
      const outcome = await runHistory(seed);
      expect(outcome.lost, `lost, seed ${seed}`).toBe(0);
      expect(outcome.falselyAcknowledged, `taken for sent, seed ${seed}`).toBe(0);
      expect(new Set(outcome.sets).size, `sets, seed ${seed}`).toBe(1);
      expect(new Set(outcome.states).size, `states, seed ${seed}`).toBe(1);
      expect(outcome.isComplete, `complete, seed ${seed}`).toBe(true);
      written += outcome.written;
      quarantined += outcome.quarantined;
    }
    // otherwise the histories would prove little
    expect(written).toBeGreaterThan(50 * 6);
    expect(quarantined).toBeGreaterThan(0);
  },
);
