import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ERA_FILE } from "../office/identity.ts";

/** Seconds are counted from 2020 on, so that the number stays short. */
const FROM = Date.UTC(2020, 0, 1);

/**
 * The era after a restore. Later than every one that is known, and later than any that was begun before now: two restores of
 * one back-up at two places, which know nothing of each other, do not begin the same life.
 *
 * @param known eras that there were: of the back-up, and of the place that is restored to.
 */
export const eraAfter = (known: readonly number[], now: Date): number =>
  Math.max(Math.floor((now.getTime() - FROM) / 1000), ...known.map((era) => era + 1));

/** The era of an office with SQLite files; 0 if it has not begun yet. */
export function readEra(dataFolder: string): number {
  const file = join(dataFolder, ERA_FILE);
  const era = existsSync(file) ? Number(readFileSync(file, "utf8").trim()) : 0;
  return Number.isSafeInteger(era) && era > 0 ? era : 0;
}

/** Writes the era whole or not at all. */
export function writeEra(dataFolder: string, era: number): void {
  const file = join(dataFolder, ERA_FILE);
  writeFileSync(`${file}.new`, `${era}\n`, { mode: 0o600, flush: true });
  renameSync(`${file}.new`, file);
}
