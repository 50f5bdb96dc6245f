import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sampleReport } from "../../../test/support/report.ts";
import type { ReportModel } from "../model/report-model.ts";
import { renderWord, wordTemplate } from "./render-word.ts";

const repository = resolve(import.meta.dirname, "../../..");
const folder = mkdtempSync(join(tmpdir(), "toeline-word-"));
const file = join(folder, "report.docx");
let model: ReportModel;
let parts: Record<string, Uint8Array>;
const part = (name: string) => new TextDecoder().decode(parts[name]);

async function wordOf(report: ReportModel, template = wordTemplate()): Promise<Uint8Array> {
  const made = await renderWord(report, template);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}
function convert(from: string, to: string): string {
  const profile = `-env:UserInstallation=file://${join(folder, "profile")}`;
  spawnSync("soffice", ["--headless", profile, "--convert-to", to, "--outdir", folder, from], {
    encoding: "utf8",
  });
  // it ends with 0 even where it could not read the file: what counts is what it wrote
  return from.replace(/\.\w+$/, `.${to}`);
}
/** Rows of every table: the texts of their cells. */
const rowsOf = (document: string): readonly (readonly string[])[] =>
  [...document.matchAll(/<w:tr\b[\s\S]*?<\/w:tr>/g)].map(([row]) =>
    [...row.matchAll(/<w:tc>[\s\S]*?<\/w:tc>/g)].map(([cell]) =>
      [...cell.matchAll(/<w:t\b[^>]*>([^<]*)<\/w:t>/g)].map((match) => match[1]).join(""),
    ),
  );

beforeAll(async () => {
  ({ model } = await sampleReport());
  const bytes = await wordOf(model);
  writeFileSync(file, bytes);
  parts = unzipSync(bytes);
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the Word document", () => {
  test("is what the schema of the format says", () => {
    const validator = join(repository, "node_modules/.bin/ooxml-validate");
    const done = spawnSync(validator, ["--of", "json", file], { encoding: "utf8", maxBuffer: 64_000_000 });
    expect(JSON.parse(done.stdout)).toEqual([]);
  });

  test("has no tag left over", () => {
    for (const name of Object.keys(parts).filter((each) =>
      /^word\/(?:document|header|footer)\d*\.xml$/.test(each),
    ))
      expect(part(name).replaceAll(/<[^>]+>/g, "")).not.toMatch(/\{[#/]?\w+\}/);
  });

  test("every row of its tables of levels and rules says what results.json says after rounding", async () => {
    const { document } = await sampleReport();
    const rows = rowsOf(part("word/document.xml")).map((cells) => cells.join("|"));
    for (const element of document.elements)
      for (const row of element.axis) {
        const number = (value: number, decimals: number, signed = false) => {
          const text = Math.abs(value).toFixed(decimals);
          const sign = Number(text) === 0 ? "" : value < 0 ? "−" : signed ? "+" : "";
          return sign + text;
        };
        const millimetres = [row.offset_east_m, row.offset_north_m, row.along_m, row.across_m, row.offset_m];
        const start = `${row.interpolated ? "* " : ""}${number(row.depth_m, 2)}|${number(row.level_m, 3, true)}|`;
        const middle = millimetres.map((metres) => number(metres * 1000, 0)).join("|");
        expect(rows.some((text) => text.startsWith(start + middle))).toBe(true);
      }
    const verdicts = model.elements.flatMap((element) => element.verdicts);
    for (const { rule, value, limit } of verdicts)
      expect(
        rows.some((text) => text.includes(`|${rule}|${value.text}|`) && text.includes(`|${limit.text}|`)),
      ).toBe(true);
  });

  test("has each drawing as dots and as a vector, with words", () => {
    const pictures = model.figures.filter(({ elementId }) => elementId !== undefined).length;
    expect(Object.keys(parts).filter((name) => /^word\/media\/.*\.svg$/.test(name))).toHaveLength(
      pictures + 1,
    );
    expect(part("word/document.xml").match(/asvg:svgBlip/g)).toHaveLength(pictures + 1);
    expect(
      part("word/document.xml").match(/<wp:docPr\b[^>]*descr="[^"]{20,}"/g)?.length,
    ).toBeGreaterThanOrEqual(pictures);
  });

  test("is opened by another program, with every element in it, and its template survives being saved there", async () => {
    const pdf = convert(file, "pdf");
    expect(existsSync(pdf)).toBe(true);
    const text = spawnSync("pdftotext", ["-layout", pdf, "-"], {
      encoding: "utf8",
      maxBuffer: 64_000_000,
    }).stdout;
    for (const { id, kind } of model.elements) expect(text).toContain(`${id} · ${kind}`);
    expect(text).toContain("Client <of> tests & others");
    const template = join(folder, "template.docx");
    writeFileSync(template, wordTemplate());
    const odt = convert(template, "odt");
    rmSync(template);
    const saved = readFileSync(convert(odt, "docx"));
    expect(saved.length).toBeGreaterThan(5000);
    expect((await wordOf(model, new Uint8Array(saved))).length).toBeGreaterThan(10_000);
  });
});
