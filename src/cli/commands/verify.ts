import { readFileSync, statSync } from "node:fs";
import type { Command } from "commander";
import { fail, ok, type Result } from "#core";
import { type EvidenceReport, type KnownHead, verifyEvidenceBag, verifyEvidenceFiles } from "#evidence";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { directoryReader } from "../files/directory-reader.ts";
import { evidenceLines } from "../reports/evidence-lines.ts";

const EXAMPLES = `
Examples:
  toeline verify wall-a-evidence.zip
  toeline verify wall-a-evidence.zip --head 412:9f86d081884c7d65
  toeline verify wall-a-evidence.zip --office-key d75a980182b10ab7…

Exit code: 0 nothing was changed, 1 something was changed, is missing or does not fit, 2 this is no evidence file.`;

interface Options {
  readonly head?: readonly string[];
  readonly officeKey?: string;
  readonly json?: true;
}

export function addVerify(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("verify")
    .summary("whether an evidence file is what was signed, and if not, from which entry on")
    .description(
      "Checks an evidence file of a job: every entry, every signature, every head. Needs no account and no network.",
    )
    .argument("<file>", "evidence file, or the folder that it was unpacked to")
    .option(
      "--head <size:root...>",
      "a head known from outside, as printed on a report; 16 digits of the root or more",
    )
    .option("--office-key <hex>", "the office's public key, 64 hexadecimal digits")
    .option("--json", "print the whole report as JSON")
    .addHelpText("after", EXAMPLES)
    .action(async (path: string, options: Options) => done(await verify(path, options, surroundings)));
}

async function verify(path: string, options: Options, { terminal }: Surroundings): Promise<ExitCode> {
  const known = knownFrom(options);
  if (!known.ok) {
    terminal.tell(known.error);
    return EXIT.nothing;
  }
  const status = statSync(path, { throwIfNoEntry: false });
  if (status === undefined) {
    terminal.tell(`There is no ${path}. Give an evidence file, or the folder that it was unpacked to.`);
    return EXIT.nothing;
  }
  const report = status.isDirectory()
    ? await verifyEvidenceFiles(filesIn(path), known.value)
    : await verifyEvidenceBag(readFileSync(path), known.value);
  if (options.json) terminal.print(JSON.stringify(report, undefined, 2));
  else for (const line of evidenceLines(report, terminal)) terminal.print(line);
  return exitOf(report);
}

function exitOf({ verdict, isSound }: EvidenceReport): ExitCode {
  if (verdict === "no-bag") return EXIT.nothing;
  return isSound ? EXIT.done : EXIT.partly;
}

function filesIn(folder: string): ReadonlyMap<string, Uint8Array<ArrayBuffer>> {
  const reader = directoryReader(folder);
  return new Map(reader.names.map((name) => [name, Uint8Array.from(reader.read(name) ?? [])]));
}

type Known = { readonly knownHeads: readonly KnownHead[]; readonly knownOfficeKey?: string };

/** What the command line says about the outside, or what is wrong with it. */
function knownFrom({ head = [], officeKey }: Options): Result<Known, string> {
  const knownHeads: KnownHead[] = [];
  for (const text of head) {
    const [, size, root] = /^(\d{1,9}):([0-9a-f]{16,64})$/i.exec(text) ?? [];
    if (size === undefined || root === undefined)
      return fail(`--head ${text}: give the number of entries, a colon and 16 to 64 digits of the root.`);
    knownHeads.push({ size: Number(size), root: root.toLowerCase() });
  }
  if (officeKey === undefined) return ok({ knownHeads });
  if (!/^[0-9a-f]{64}$/i.test(officeKey))
    return fail(`--office-key ${officeKey}: a public key has 64 hexadecimal digits.`);
  return ok({ knownHeads, knownOfficeKey: officeKey.toLowerCase() });
}
