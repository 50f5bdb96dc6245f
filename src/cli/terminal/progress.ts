import type { Terminal } from "./terminal.ts";

const WIDTH = 30;
const EVERY_MS = 100;
/** A job that is done sooner needs no bar. */
const SILENT_MS = 400;

export interface Progress {
  /** told as often as convenient; draws only a few times a second */
  report(done: number, total: number): void;
  /** takes the bar away */
  finish(): void;
}

/** A bar on the standard error output, for a person who watches; nothing at all otherwise. */
export function progressBar(terminal: Terminal, what: string, now: () => number): Progress {
  if (!terminal.watched) return { report: () => {}, finish: () => {} };
  const started = now();
  let drawn = Number.NEGATIVE_INFINITY;
  return {
    report(done, total) {
      const time = now();
      if (time - started < SILENT_MS || time - drawn < EVERY_MS) return;
      drawn = time;
      const filled = total > 0 ? Math.round((WIDTH * done) / total) : 0;
      const bar = "=".repeat(filled).padEnd(WIDTH, " ");
      terminal.overwrite(`[${bar}] ${done} of ${total} ${what}`);
    },
    finish() {
      if (Number.isFinite(drawn)) terminal.overwrite("");
    },
  };
}
