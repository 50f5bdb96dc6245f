import { existsSync, statSync } from "node:fs";
import type { Command } from "commander";
import { backUp, moveOffice, type OfficePlace, type OfficeTally, restoreOffice } from "#server";
import { sentenceOf } from "#text";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { counted } from "../terminal/counted.ts";
import { progressBar } from "../terminal/progress.ts";

const BACKUP_EXAMPLES = `
The server may go on running. The file holds everything but sessions and links that were sent out: whoever has it has the
office's key and all records, so keep it as safe as the office itself.

Examples:
  toeline backup --data /srv/toeline --out /backup/2026-03-02.toeline-backup
  TOELINE_DATABASE=postgres://… toeline backup --out /backup/2026-03-02.toeline-backup

Exit code: 0 written, 2 nothing was written.`;

const RESTORE_EXAMPLES = `
Every hash in the file is checked before anything is written, every entry after it. The place must be empty. Devices find out by
themselves what the office lacks since the back-up, and send it again.

Examples:
  toeline restore /backup/2026-03-02.toeline-backup --data /srv/toeline
  toeline restore /backup/2026-03-02.toeline-backup --database postgres://…/toeline

Exit code: 0 restored, 2 nothing was restored.`;

const MOVE_EXAMPLES = `
Stop the server first. The folder stays as it is; start the server on the database afterwards.

Example:
  toeline move --data /srv/toeline --to postgres://…/toeline

Exit code: 0 moved, 2 nothing was moved.`;

interface PlaceOptions {
  readonly data?: string;
  readonly database?: string;
}

export function addBackUp(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("backup")
    .summary("all records of an office into one file")
    .description("Writes all records of an office into one file, as they are at one moment.")
    .option("--data <dir>", "data folder of the office")
    .option("--database <address>", "PostgreSQL database of the office (or TOELINE_DATABASE)")
    .requiredOption("--out <file>", "new file")
    .addHelpText("after", BACKUP_EXAMPLES)
    .action(async (options: PlaceOptions & { readonly out: string }) =>
      done(await writeBackUp(options, options.out, surroundings)),
    );
  program
    .command("restore")
    .summary("from a back-up to an empty place")
    .description("Brings an office back from a file into an empty place.")
    .argument("<file>", "written by toeline backup")
    .option("--data <dir>", "new or empty data folder")
    .option("--database <address>", "empty PostgreSQL database (or TOELINE_DATABASE)")
    .addHelpText("after", RESTORE_EXAMPLES)
    .action(async (file: string, options: PlaceOptions) => done(await restore(file, options, surroundings)));
  program
    .command("move")
    .summary("from a data folder to a PostgreSQL database")
    .description("Copies an office from its data folder into an empty PostgreSQL database.")
    .requiredOption("--data <dir>", "data folder of the office")
    .requiredOption("--to <address>", "empty PostgreSQL database")
    .addHelpText("after", MOVE_EXAMPLES)
    .action(async (options: { readonly data: string; readonly to: string }) =>
      done(await move(options, surroundings)),
    );
}

async function writeBackUp(
  options: PlaceOptions,
  file: string,
  surroundings: Surroundings,
): Promise<ExitCode> {
  const { terminal } = surroundings;
  const place = placeOf(options);
  if (typeof place === "string") return refuse(surroundings, place);
  if (existsSync(file)) return refuse(surroundings, `${file} is there already. Choose another name.`);
  const bar = progressBar(terminal, "rows", surroundings.now);
  const written = await backUp(place, file, new Date(), (rows) => bar.report(rows, rows));
  bar.finish();
  if (!written.ok) return refuse(surroundings, sentenceOf(written.error));
  const megabytes = (statSync(file).size / 1e6).toFixed(1);
  terminal.print(`${contents(written.value)} written to ${file} (${megabytes} MB).`);
  return EXIT.done;
}

async function restore(file: string, options: PlaceOptions, surroundings: Surroundings): Promise<ExitCode> {
  const place = placeOf(options);
  if (typeof place === "string") return refuse(surroundings, place);
  const restored = await restoreOffice(file, place, new Date(), progressOn(surroundings));
  if (!restored.ok) return refuse(surroundings, sentenceOf(restored.error));
  const { head, tally } = restored.value;
  surroundings.terminal.print(
    `${contents(tally)} restored as of ${head.made_at}. Every entry was checked, and every job holds the same entries as the back-up.`,
  );
  return EXIT.done;
}

async function move(
  { data, to }: { readonly data: string; readonly to: string },
  surroundings: Surroundings,
): Promise<ExitCode> {
  const moved = await moveOffice(
    { dataFolder: data },
    { database: to },
    new Date(),
    progressOn(surroundings),
  );
  if (!moved.ok) return refuse(surroundings, sentenceOf(moved.error));
  surroundings.terminal.print(
    `${contents(moved.value.tally)} moved. Every entry was checked, and every job holds the same entries on both sides. ` +
      `${data} is as it was; keep it until the server has run on the database for a while.`,
  );
  return EXIT.done;
}

function progressOn({ terminal, now }: Surroundings) {
  const writing = progressBar(terminal, "rows written", now);
  const checking = progressBar(terminal, "rows checked", now);
  let written = 0;
  return {
    onWritten: (rows: number) => {
      written = rows;
      writing.report(rows, rows);
    },
    onChecked: (rows: number) => {
      if (rows >= written) checking.finish();
      else checking.report(rows, written);
    },
  };
}

function placeOf({ data, database }: PlaceOptions): OfficePlace | string {
  const address = database ?? (data === undefined ? process.env["TOELINE_DATABASE"] : undefined);
  if (data !== undefined && address !== undefined) return "Give --data or --database, not both.";
  if (data !== undefined) return { dataFolder: data };
  return address === undefined ? "Say where the records are: --data or --database." : { database: address };
}

function contents({ jobs }: OfficeTally): string {
  const all = Object.values(jobs);
  const entries = all.reduce((sum, { size }) => sum + size, 0);
  return `${counted(all.length, "job")} with ${entries} ${entries === 1 ? "entry" : "entries"}`;
}

function refuse({ terminal }: Surroundings, sentence: string): ExitCode {
  terminal.tell(sentence);
  return EXIT.nothing;
}
