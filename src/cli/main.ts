import { version } from "#text";
import type { Surroundings } from "./command.ts";
import { EXIT } from "./exit-code.ts";
import { exitCodeOfCommander, runProgram } from "./program.ts";
import { answerAsWorker } from "./reduce-with-workers.ts";
import { systemErrorSentence } from "./system-error.ts";
import { processTerminal } from "./terminal/terminal.ts";

let interrupted = false;
const surroundings: Surroundings = {
  terminal: processTerminal(process.env),
  now: () => performance.now(),
  interrupted: () => interrupted,
  holdInterrupt: () => {
    process.on("SIGINT", () => {
      interrupted = true;
    });
  },
};

// whoever reads our output may stop early (`| head`): that is no mistake
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(EXIT.done);
  surroundings.terminal.tell(systemErrorSentence(error) ?? error.message);
  process.exit(EXIT.nothing);
});

try {
  // the exit code is set, not called, so that a long output into a pipe is written to its end
  if (!answerAsWorker()) process.exitCode = await runProgram(process.argv.slice(2), surroundings);
} catch (error) {
  process.exitCode = explain(error, surroundings);
}

function explain(error: unknown, { terminal }: Surroundings): number {
  const code = exitCodeOfCommander(error);
  if (code !== undefined) return code;
  const sentence = systemErrorSentence(error);
  if (sentence !== undefined) {
    terminal.tell(sentence);
    return EXIT.nothing;
  }
  const [message = ""] = String(error instanceof Error ? error.message : error).split("\n");
  terminal.tell(
    `This is a mistake of toeline ${version}, not of your files, which are unchanged: ${message} ` +
      "Please report it with the job; TOELINE_TRACE=1 shows where it happened.",
  );
  if (process.env["TOELINE_TRACE"] && error instanceof Error) terminal.tell(error.stack ?? "");
  return EXIT.programMistake;
}
