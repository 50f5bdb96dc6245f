import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fail, type Issue, ok, type Result, VERDICTS } from "#core";
import { verdictSymbol } from "#figures";
import { attempt } from "../attempt.ts";
import { codeDrawing } from "../code-drawing.ts";
import { fallbackFonts, inReportFace, textFonts } from "../fonts.ts";
import type { ReportModel } from "../model/report-model.ts";
import { readAsset } from "../read-asset.ts";
import { type Paper, typstData } from "./typst-data.ts";

export interface PdfOptions {
  /** A4 where left out */
  readonly paper?: Paper;
}

/** Reading the fonts takes longer than a short report, so a program keeps its typesetter. What it was given is taken away before each report. */
const typesetter = kept(async () => {
  const { NodeCompiler } = await import("@myriaddreamin/typst-ts-node-compiler");
  const fontBlobs = [...textFonts(), ...fallbackFonts()].map((file) => readFileSync(file));
  return NodeCompiler.create({ workspace: WORKSPACE, fontArgs: [{ fontBlobs }] });
});

/** A place that need not exist: everything comes from memory, and nothing outside of it can be read. */
const WORKSPACE = "/toeline-report";

/**
 * The report as PDF/UA-1: tagged, fonts embedded, drawings as vectors. The same model always gives the same bytes.
 *
 * Errors: report.pdf-not-made, with what the typesetter said; it refuses a missing sign or description instead of leaving a hole.
 */
export async function renderPdf(
  model: ReportModel,
  options: PdfOptions = {},
): Promise<Result<Uint8Array, readonly Issue[]>> {
  const compiler = await typesetter();
  compiler.resetShadow();
  const map = (name: string, content: string | Uint8Array) =>
    compiler.mapShadow(join(WORKSPACE, name), Buffer.from(content));
  for (const verdict of VERDICTS) map(`verdict-${verdict}.svg`, symbolDrawing(verdict));
  map("code.svg", codeDrawing(model.codeText));
  for (const [i, figure] of model.figures.entries()) map(`figure-${i}.svg`, inReportFace(figure.svg));
  map("report.json", JSON.stringify(typstData(model, options.paper ?? "a4")));
  map("layout.typ", readAsset("layout.typ"));
  const compiled = compiler.compile({ mainFilePath: join(WORKSPACE, "layout.typ") });
  const { result } = compiled;
  if (result === null) {
    const said = compiled.takeError();
    const reasons = said === null ? [] : compiler.fetchDiagnostics(said).map(describe);
    return fail(reasons.slice(0, 20).map(notMade));
  }
  const pdf = await attempt(() =>
    compiler.pdf(result, { pdfStandard: "ua-1", creationTimestamp: timestampOf(model) }),
  );
  compiler.evictCache(0);
  return pdf.ok ? ok(new Uint8Array(pdf.value)) : fail([notMade(pdf.error)]);
}

/** Made at the first call and kept. */
function kept<T>(make: () => Promise<T>): () => Promise<T> {
  const made: { value?: Promise<T> } = {};
  return () => {
    made.value ??= make();
    return made.value;
  };
}

const notMade = (reason: string): Issue => ({
  code: "report.pdf-not-made",
  severity: "error",
  place: {},
  values: { reason },
});

function describe(said: unknown): string {
  const { message } = said as { readonly message?: string };
  return message ?? JSON.stringify(said);
}

/** Seconds of the report's own date: the clock of the machine plays no part. */
function timestampOf({ identity }: ReportModel): number {
  const seconds = Date.parse(identity.date) / 1000;
  return Number.isFinite(seconds) ? seconds : 0;
}

function symbolDrawing(verdict: Parameters<typeof verdictSymbol>[0]): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 26 26" width="26" height="26">${verdictSymbol(verdict, 13, 13, 10)}</svg>`;
}
