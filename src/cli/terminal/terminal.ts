/** Where a command writes. Results go to `print`; everything about the work itself goes to `tell`. */
export interface Terminal {
  /** one line or more to the standard output */
  print(text: string): void;
  /** one line or more to the standard error output */
  tell(text: string): void;
  /** whether printed text may carry colour */
  readonly colour: boolean;
  /** whether printed text may hold signs outside ASCII */
  readonly signs: boolean;
  /** whether a person watches the standard error output, so that a moving bar makes sense */
  readonly watched: boolean;
  /** moves to the start of the line and writes over it, on the standard error output */
  overwrite(text: string): void;
}

/** The terminal of this process. Colour only for a person, and never where NO_COLOR is set. */
export function processTerminal(environment: Readonly<Record<string, string | undefined>>): Terminal {
  const plain = Boolean(environment["NO_COLOR"]) || environment["TERM"] === "dumb";
  const locale = environment["LC_ALL"] || environment["LC_CTYPE"] || environment["LANG"] || "";
  return {
    print: (text) => void process.stdout.write(`${text}\n`),
    tell: (text) => void process.stderr.write(`${text}\n`),
    colour: process.stdout.isTTY === true && !plain,
    // a locale that names another character set would show the signs as question marks
    signs: !/\.(?!utf-?8)/i.test(locale),
    watched: process.stderr.isTTY === true && environment["TERM"] !== "dumb",
    overwrite: (text) => void process.stderr.write(`\r\u001b[2K${text}`),
  };
}
