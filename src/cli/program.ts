import { Command, CommanderError } from "commander";
import { version } from "#text";
import type { Surroundings } from "./command.ts";
import { addBackUp } from "./commands/back-up.ts";
import { addCheck } from "./commands/check.ts";
import { addExportJob } from "./commands/export-job.ts";
import { addImport } from "./commands/import.ts";
import { addPushAndPull } from "./commands/push-and-pull.ts";
import { addReduce } from "./commands/reduce.ts";
import { addReport } from "./commands/report.ts";
import { addServe } from "./commands/serve.ts";
import { addSimulate } from "./commands/simulate.ts";
import { addVerify } from "./commands/verify.ts";
import { EXIT, type ExitCode } from "./exit-code.ts";

const AFTER = `
A job is a folder with job.json, elements.csv and readings/, or a .zip of it.

Examples:
  toeline check site-4
  toeline reduce site-4 --out results
  toeline help reduce

Exit code: 0 done, 1 done in part, 2 nothing could be done, 70 a mistake of the program, 130 stopped by Ctrl-C.`;

/** Reads the command line and runs the command. @param args without the program's own name. */
export async function runProgram(args: readonly string[], surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  let code: ExitCode = EXIT.done;
  const done = (result: ExitCode) => {
    code = result;
  };
  const program = new Command("toeline")
    .description("Where a pile, panel, tube or hole really went: path, offsets from design and a verdict.")
    .version(version)
    .helpOption("-h, --help", "show this help")
    .helpCommand("help [command]", "show the help of a command")
    .configureOutput({
      writeOut: (text) => terminal.print(text.trimEnd()),
      writeErr: (text) => terminal.tell(text.trimEnd()),
      outputError: (text, write) =>
        write(text.replace(/^error: (.)/, (_, first: string) => first.toUpperCase())),
    })
    .showHelpAfterError("Run toeline --help to see what there is.")
    .exitOverride()
    .addHelpText("after", AFTER);
  // subcommands take these settings over when they are made
  addCheck(program, surroundings, done);
  addReduce(program, surroundings, done);
  addReport(program, surroundings, done);
  addServe(program, surroundings, done);
  addSimulate(program, surroundings, done);
  addImport(program, surroundings, done);
  addExportJob(program, surroundings, done);
  addPushAndPull(program, surroundings, done);
  addVerify(program, surroundings, done);
  addBackUp(program, surroundings, done);
  await program.parseAsync(args, { from: "user" });
  return code;
}

/** Commander tells the end of help and of a wrong command line by throwing. */
export function exitCodeOfCommander(error: unknown): ExitCode | undefined {
  if (!(error instanceof CommanderError)) return undefined;
  return error.exitCode === 0 ? EXIT.done : EXIT.nothing;
}
