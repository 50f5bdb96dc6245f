/**
 * What the program's exit code says; the same for every command (docs/users/command-line.md).
 *
 * `done` is the answer also where elements are outside: a verdict is a result, not a failure.
 */
export const EXIT = {
  done: 0,
  /** check: errors were found; reduce: some runs could not be worked out */
  partly: 1,
  /** the command line is wrong, or nothing could be read, worked out or written */
  nothing: 2,
  /** a mistake of the program itself */
  programMistake: 70,
  interrupted: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
