import type { Terminal } from "./terminal/terminal.ts";

/** What a command gets from the outside besides its arguments. */
export interface Surroundings {
  readonly terminal: Terminal;
  /** milliseconds, for progress only */
  readonly now: () => number;
  /** true once the user has asked to stop (Ctrl-C) while files were being written */
  readonly interrupted: () => boolean;
  /** from here on Ctrl-C is asked for through `interrupted`, and does not end the program at once */
  readonly holdInterrupt: () => void;
}
