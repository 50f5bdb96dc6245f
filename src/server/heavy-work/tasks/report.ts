import { z } from "zod";
import { fail, type Issue, ok, type Result, reduceJob } from "#core";
import { rootOfIds } from "#records";
import { REPORT_STATUSES, type ReportModel, renderPdf, renderWord, reportOfJob, wordTemplate } from "#report";
import { error } from "../../issue.ts";
import { definedOnly } from "./defined-only.ts";
import { keepResult } from "./keep-result.ts";
import { type LoggedJob, readLoggedJob } from "./read-logged-job.ts";
import type { Task, TaskOrder } from "./task.ts";

const MAX_TEXT = 200;
const text = z.string().max(MAX_TEXT);

const input = z.strictObject({
  format: z.enum(["pdf", "word"]).describe("of the file"),
  language: z.enum(["en", "de"]).default("en"),
  units: z.enum(["si", "us"]).default("si").describe("us: feet and inches"),
  paper: z.enum(["a4", "us-letter"]).default("a4").describe("of the PDF"),
  elements: z.array(text.min(1)).min(1).max(10_000).optional().describe("only these; all when left out"),
  number: text.default("1").describe("of the report"),
  revision: text.default("A"),
  status: z.enum(REPORT_STATUSES).default("draft"),
  date: z.iso.date().optional().describe("of this revision; when left out, the day of the signed head"),
  title: text.optional(),
  client: text.optional(),
  site: text.optional(),
  contractor: text.optional(),
  author: text.optional(),
});

type Input = z.output<typeof input>;

/** Writes the paper on a job as its log says it is, with the head of the log in it that the office has signed. */
export const reportTask: Task<Input> = {
  name: "report",
  description: "Works the job out and writes its report as PDF or Word document.",
  input,
  run: async (order, asked, { store, onProgress }) => {
    const logged = await readLoggedJob(store, order);
    if (!logged.ok) return logged;
    const { job } = logged.value;
    const unknown = (asked.elements ?? []).filter((id) => !job.elements.some((element) => element.id === id));
    if (unknown.length > 0)
      return fail(
        error("work.input", { task: "report", field: "input.elements", found: unknown.join(", ") }),
      );
    const head = await headOf(logged.value, order);
    if (!head.ok) return head;
    const only = asked.elements === undefined ? {} : { only: asked.elements };
    const results = reduceJob(job, { ...only, onProgress });
    const model = modelOf(logged.value, results, asked, head.value);
    const made = await render(model, asked);
    if (!made.ok) return made;
    return keepResult(store, new Uint8Array(made.value), FILES[asked.format]);
  },
};

const FILES = {
  pdf: { name: "report.pdf", type: "application/pdf" },
  word: {
    name: "report.docx",
    type: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
  },
} as const;

interface Head {
  readonly size: number;
  readonly root: string;
  readonly day: string;
}

/** What the office signed must be what was read: otherwise the log was changed in between. */
async function headOf({ entries }: LoggedJob, { job, signed }: TaskOrder): Promise<Result<Head, Issue>> {
  const size = entries.length;
  const root = await rootOfIds(entries.map(({ id }) => id));
  if (signed !== undefined && signed.root !== root) return fail(error("server.log-changed", { job, size }));
  const at = signed?.at ?? entries.at(-1)?.clock.wall ?? "";
  return ok({ size, root, day: at.slice(0, "2026-03-20".length) });
}

function modelOf(
  { read, job, folder, findings }: LoggedJob,
  results: ReturnType<typeof reduceJob>,
  { language, units, elements, format: _format, paper: _paper, date, ...identity }: Input,
  { size, root, day }: Head,
): ReportModel {
  const { number, revision, status, ...cover } = identity;
  return reportOfJob({ read, job, results }, folder, {
    language,
    units,
    report: { number, revision, status, date: date ?? day, ...definedOnly(cover) },
    head: { size, root },
    findings,
    ...(elements !== undefined && { elements }),
  });
}

async function render(model: ReportModel, { format, paper }: Input): Promise<Result<Uint8Array, Issue>> {
  const made = format === "pdf" ? await renderPdf(model, { paper }) : await renderWord(model, wordTemplate());
  if (made.ok) return made;
  const [first] = made.error;
  return fail(first ?? error("report.pdf-not-made", { reason: "" }));
}
