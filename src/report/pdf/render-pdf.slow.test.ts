import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sampleReport } from "../../../test/support/report.ts";
import type { ReportModel } from "../model/report-model.ts";
import { renderPdf } from "./render-pdf.ts";

const folder = mkdtempSync(join(tmpdir(), "toeline-pdf-"));
const file = join(folder, "report.pdf");
let model: ReportModel;
let bytes: Uint8Array;

/** Tools that nobody here wrote: qpdf, and those of poppler. */
function ran(
  program: string,
  ...args: readonly string[]
): { readonly code: number | null; readonly text: string } {
  const done = spawnSync(program, args, { encoding: "utf8", maxBuffer: 64_000_000 });
  if (done.error !== undefined) throw new Error(`${program}: ${done.error.message}`);
  return { code: done.status, text: done.stdout };
}
async function pdfOf(report: ReportModel): Promise<Uint8Array> {
  const made = await renderPdf(report);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

beforeAll(async () => {
  ({ model } = await sampleReport());
  bytes = await pdfOf(model);
  writeFileSync(file, bytes);
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the PDF", () => {
  test("is sound for a checker that nobody here wrote", () => {
    expect(ran("qpdf", "--check", file).code).toBe(0);
  });

  test("is tagged: headings and tables with heads are there for a screen reader", () => {
    expect(ran("pdfinfo", file).text).toMatch(/Tagged:\s+yes/);
    const structure = ran("pdfinfo", "-struct-text", file).text;
    for (const tag of ["H1", "H2", "Table", "TH", "Figure"]) expect(structure).toContain(`${tag} `);
    for (const { title } of model.sections) expect(structure).toContain(title);
  });

  test("has every font inside", () => {
    const fonts = ran("pdffonts", file).text.trim().split("\n").slice(2);
    expect(fonts.length).toBeGreaterThan(2);
    for (const line of fonts) expect(line).toMatch(/\s(yes) (yes|no) (yes|no)\s/);
  });

  test("is the same byte for byte when it is made again", async () => {
    expect(Buffer.compare(Buffer.from(await pdfOf(model)), Buffer.from(bytes))).toBe(0);
  });

  test("says the verdict of every element, number, revision, state and fingerprint on paper", () => {
    const text = ran("pdftotext", "-layout", file, "-").text;
    for (const { id, word, governing } of model.elements) {
      const row = text.split("\n").find((line) => line.trim().startsWith(`${id} `) && line.includes(word));
      expect(row, id).toBeDefined();
      if (governing !== undefined) expect(row).toContain(governing.value.text);
    }
    const pages = text.split("\f").filter((page) => page.trim() !== "");
    for (const page of pages.slice(1)) {
      expect(page).toContain("Report T-1");
      expect(page).toContain("Draft");
      expect(page).toContain("0123456789abcdef");
      expect(page).toMatch(/Page \d+ of \d+/);
    }
    expect(pages[1]).toContain("Verdict of each element");
  });

  test("is written in German and on US letter too", async () => {
    const german = await sampleReport({ language: "de", units: "us" });
    const made = await renderPdf(german.model, { paper: "us-letter" });
    expect(made.ok).toBe(true);
    if (made.ok) writeFileSync(file, made.value);
    expect(ran("pdfinfo", file).text).toContain("612 x 792");
  });
});
