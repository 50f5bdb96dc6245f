import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { type Command, InvalidArgumentError, Option } from "commander";
import { fail, type Issue, type Language, ok, type Result } from "#core";
import {
  REPORT_STATUSES,
  type ReportIdentity,
  type ReportModel,
  type ReportStatus,
  readReportModel,
  renderPdf,
  renderWord,
  reportFigureFiles,
  reportOfJob,
  reportWorkbook,
  wordTemplate,
} from "#report";
import { sentenceOf, type UnitSystem } from "#text";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { openJob } from "../files/open-job.ts";
import { whyNotWritable, writeFolder } from "../files/output-folder.ts";
import { workOutJob } from "../work-out-job.ts";

const EXAMPLES = `
Examples:
  toeline report site-4 --pdf site-4.pdf
  toeline report site-4 --word site-4.docx --pdf site-4.pdf --number SQ-12 --revision B --status issued
  toeline report site-4 --save-template ours.docx          the usual template, to be edited in Word
  toeline report site-4 --word site-4.docx --template ours.docx
  toeline report site-4 --pdf b.pdf --model b.json --previous a.json   what changed since revision A

Exit code: 0 written, 2 nothing was written.`;

interface ReportCommand {
  readonly word?: string;
  readonly pdf?: string;
  readonly xlsx?: string;
  readonly figures?: string;
  readonly model?: string;
  readonly previous?: string;
  readonly template?: string;
  readonly saveTemplate?: string;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly paper: "a4" | "us-letter";
  readonly only?: readonly string[];
  readonly number: string;
  readonly revision: string;
  readonly status: ReportStatus;
  readonly date?: string;
  readonly title?: string;
  readonly client?: string;
  readonly site?: string;
  readonly contractor?: string;
  readonly author?: string;
}

/** A calendar day on the command line. */
const day = (text: string): string => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number.isNaN(Date.parse(text)))
    throw new InvalidArgumentError("A date such as 2026-03-20.");
  return text;
};

export function addReport(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("report")
    .summary("the paper that is signed and sent: Word, PDF, workbook")
    .description("Works a job out and writes its report: verdicts first, then every number behind them.")
    .argument("<job>", "folder with job.json, or a .zip of it")
    .option("--pdf <file>", "as PDF: tagged, fonts inside, the same bytes for the same data and date")
    .option("--word <file>", "as Word document")
    .option("--xlsx <file>", "the tables as a workbook")
    .option("--figures <dir>", "the drawings, each as SVG and PNG")
    .option("--template <file>", "your own Word template (docs/users/reports.md lists its tags)")
    .option("--save-template <file>", "write the usual Word template, to be edited")
    .option("--model <file>", "write what the report says as JSON, for --previous of the next revision")
    .option("--previous <file>", "JSON of the revision before; the report lists what changed")
    .addOption(new Option("--language <name>", "of the report").choices(["en", "de"]).default("en"))
    .addOption(new Option("--units <name>", "si, or us: feet and inches").choices(["si", "us"]).default("si"))
    .addOption(new Option("--paper <name>", "of the PDF").choices(["a4", "us-letter"]).default("a4"))
    .option("--only <element...>", "only these elements")
    .option("--number <text>", "number of the report", "1")
    .option("--revision <text>", "of the report", "A")
    .addOption(new Option("--status <name>", "how far it has come").choices(REPORT_STATUSES).default("draft"))
    .option("--date <day>", "of this revision; today when left out", day)
    .option("--title <text>", "on the cover")
    .option("--client <name>", "on the cover")
    .option("--site <name>", "on the cover")
    .option("--contractor <name>", "on the cover")
    .option("--author <name>", "on the cover")
    .addHelpText("after", EXAMPLES)
    .action(async (path: string, options: ReportCommand) => done(await report(path, options, surroundings)));
}

async function report(path: string, options: ReportCommand, surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  const refuse = (sentence: string): ExitCode => {
    terminal.tell(sentence);
    return EXIT.nothing;
  };
  if (options.saveTemplate !== undefined) save(options.saveTemplate, wordTemplate());
  const asked = [options.word, options.pdf, options.xlsx, options.figures, options.model];
  if (asked.every((file) => file === undefined))
    return options.saveTemplate === undefined
      ? refuse("Nothing to write: give --pdf, --word, --xlsx, --figures or --model.")
      : EXIT.done;
  const unwritable = options.figures === undefined ? undefined : whyNotWritable(options.figures);
  if (unwritable !== undefined) return refuse(unwritable);
  const made = await modelOf(path, options, surroundings);
  if (!made.ok) return refuse(made.error);
  const written = await writeReport(made.value, options, surroundings);
  return written.ok ? EXIT.done : refuse(written.error);
}

async function modelOf(
  path: string,
  options: ReportCommand,
  surroundings: Surroundings,
): Promise<Result<ReportModel, string>> {
  const { only, language, units } = options;
  const previous =
    options.previous === undefined ? undefined : readReportModel(readFileSync(options.previous, "utf8"));
  if (options.previous !== undefined && previous === undefined)
    return fail(`${options.previous} is not what --model writes.`);
  const worked = await workOutJob(path, only === undefined ? {} : { only }, surroundings);
  if (!worked.ok) return worked;
  const { read, job, results } = worked.value;
  if (job === undefined || results === undefined) return fail("The job cannot be read: see toeline check.");
  const unknown = (only ?? []).filter((id) => !job.elements.some((element) => element.id === id));
  if (unknown.length > 0) return fail(`The job has no element ${unknown.join(", ")}.`);
  const opened = openJob(path);
  if (!opened.ok) return fail(opened.error);
  return ok(
    reportOfJob({ read, job, results }, opened.value, {
      language,
      units,
      report: identityOf(options),
      ...(only !== undefined && { elements: only }),
      ...(previous !== undefined && { previous }),
    }),
  );
}

const COVER = ["title", "client", "site", "contractor", "author"] as const;

function identityOf(options: ReportCommand): ReportIdentity {
  const { number, revision, status } = options;
  const given = COVER.flatMap((key) => (options[key] === undefined ? [] : [[key, options[key]] as const]));
  const date = options.date ?? new Date().toISOString().slice(0, 10);
  return { number, revision, status, date, ...Object.fromEntries(given) };
}

/** Whole files only: each is written once it is made. */
async function writeReport(
  model: ReportModel,
  options: ReportCommand,
  { terminal, interrupted }: Surroundings,
): Promise<Result<undefined, string>> {
  const { language } = options;
  const sentences = (issues: readonly Issue[]) =>
    fail(issues.map((issue) => sentenceOf(issue, language)).join("\n"));
  const saved = (file: string, content: string | Uint8Array) => {
    save(file, content);
    terminal.print(`${file} written.`);
  };
  if (options.model !== undefined) saved(options.model, `${JSON.stringify(model)}\n`);
  if (options.pdf !== undefined) {
    const pdf = await renderPdf(model, { paper: options.paper });
    if (!pdf.ok) return sentences(pdf.error);
    saved(options.pdf, pdf.value);
  }
  if (options.word !== undefined) {
    const template = options.template === undefined ? wordTemplate() : readFileSync(options.template);
    const word = await renderWord(model, template);
    if (!word.ok) return sentences(word.error);
    saved(options.word, word.value);
  }
  if (options.xlsx !== undefined) saved(options.xlsx, await reportWorkbook(model));
  if (options.figures === undefined) return ok(undefined);
  const written = await writeFolder(options.figures, await reportFigureFiles(model), interrupted);
  return written.ok ? ok(undefined) : written;
}

function save(file: string, content: string | Uint8Array): void {
  mkdirSync(dirname(resolve(file)), { recursive: true });
  writeFileSync(file, content);
}
