import type { Issue } from "#core";
import type { Entry } from "../entry/entry.ts";
import { warning } from "../issue.ts";

/** A clock that is set by a second or two is nothing to speak of. Milliseconds; common practice, no source. */
const JUMP_LIMIT_MS = 2_000;
/** Difference from the office clock that people should know about. Milliseconds; common practice, no source. */
const OFFSET_LIMIT_MS = 120_000;

/**
 * What the clocks of one device did: wall time against the clock that never jumps. Nothing is mended; the order of entries
 * comes from their numbers.
 *
 * @param chain entries of one device in their order.
 *
 * Warnings: records.clock-jump, records.clock-backwards, records.clock-monotonic, records.clock-offset.
 */
export function clockFindings(chain: readonly Entry[]): readonly Issue[] {
  return chain.flatMap((entry, i) => {
    const before = chain[i - 1];
    const place = { device: entry.device, sequence: entry.sequence };
    const found = before === undefined ? [] : betweenEntries(before, entry, place);
    const offset = entry.clock.server_offset_ms;
    if (offset !== undefined && Math.abs(offset) > OFFSET_LIMIT_MS)
      found.push(warning("records.clock-offset", { ...place, found: offset / 1000 }));
    return found;
  });
}

function betweenEntries(before: Entry, entry: Entry, place: Record<string, string | number>): Issue[] {
  const wallMs = Date.parse(entry.clock.wall) - Date.parse(before.clock.wall);
  if (before.clock.session !== entry.clock.session)
    return wallMs < 0 ? [warning("records.clock-backwards", { ...place, found: wallMs / 1000 })] : [];
  const steadyMs = entry.clock.monotonic_ms - before.clock.monotonic_ms;
  if (steadyMs < 0) return [warning("records.clock-monotonic", { ...place, found: steadyMs / 1000 })];
  const jumpMs = wallMs - steadyMs;
  if (Math.abs(jumpMs) <= JUMP_LIMIT_MS) return [];
  return [warning("records.clock-jump", { ...place, found: jumpMs / 1000 })];
}
