import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { sampleReport } from "../../../test/support/report.ts";
import { checkTemplate } from "./check-template.ts";
import { renderWord, wordTemplate } from "./render-word.ts";

type Parts = Record<string, Uint8Array>;

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const usual = unzipSync(wordTemplate());
/** The usual template with something put into it. */
function template(change: (parts: Parts) => void): Uint8Array {
  const parts: Parts = { ...usual };
  change(parts);
  return zipSync(parts);
}
const intoBody = (markup: string) =>
  template((parts) => {
    parts["word/document.xml"] = strToU8(
      text(usual["word/document.xml"]!).replace("<w:body>", `<w:body>${markup}`),
    );
  });
const field = (code: string) =>
  intoBody(
    `<w:p><w:r><w:fldChar w:fldCharType="begin"/></w:r>${code}<w:r><w:fldChar w:fldCharType="end"/></w:r></w:p>`,
  );
const instruction = (code: string) => `<w:r><w:instrText xml:space="preserve">${code}</w:instrText></w:r>`;
const related = (type: string, target: string, mode = ' TargetMode="External"') =>
  template((parts) => {
    const name = "word/_rels/document.xml.rels";
    const kind = `http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}`;
    parts[name] = strToU8(
      text(usual[name]!).replace(
        "</Relationships>",
        `<Relationship Id="rIdX" Type="${kind}" Target="${target}"${mode}/></Relationships>`,
      ),
    );
  });
const withPart = (name: string, content = "x") =>
  template((parts) => {
    parts[name] = strToU8(content);
  });
const documentOf = (content: string) =>
  template((parts) => {
    parts["word/document.xml"] = strToU8(content);
  });

const hostile: readonly (readonly [string, Uint8Array, string])[] = [
  ["macros", withPart("word/vbaProject.bin"), "report.template-active"],
  ["an ActiveX control", withPart("word/activeX/activeX1.xml", "<x/>"), "report.template-active"],
  ["an embedded object", withPart("word/embeddings/oleObject1.bin"), "report.template-active"],
  ["a program", withPart("word/media/run.exe"), "report.template-active"],
  ["changes of the user interface", withPart("customUI/customUI.xml", "<x/>"), "report.template-active"],
  ["a foreign document", intoBody('<w:altChunk r:id="rId9"/>'), "report.template-active"],
  ["an OLE object in the text", intoBody("<w:p><w:r><w:object/></w:r></w:p>"), "report.template-active"],
  ["a sub-document", intoBody('<w:subDoc r:id="rId9"/>'), "report.template-active"],
  [
    "an attached template",
    related("attachedTemplate", "https://example.invalid/a.dotm"),
    "report.template-active",
  ],
  ["a picture from a server", related("image", "https://example.invalid/p.png"), "report.template-outside"],
  ["a picture from a share", related("image", "\\\\host\\share\\p.png", ""), "report.template-outside"],
  ["a local file", related("image", "file:///etc/passwd"), "report.template-outside"],
  ["a link that is a script", related("hyperlink", "javascript:alert(1)"), "report.template-outside"],
  [
    "a picture field",
    field(instruction(' INCLUDEPICTURE "http://example.invalid/x" ')),
    "report.template-field",
  ],
  ["a text field", field(instruction(' INCLUDETEXT "C:\\\\secret.docx" ')), "report.template-field"],
  [
    "a DDE field",
    field(instruction(' DDEAUTO c:\\\\windows\\\\cmd.exe "/k calc" ')),
    "report.template-field",
  ],
  ["a DDE field in pieces", field(instruction(" DD") + instruction("E cmd ")), "report.template-field"],
  ["a DDE field of character references", field(instruction(" &#68;&#x44;E cmd ")), "report.template-field"],
  [
    "a simple field",
    intoBody('<w:p><w:fldSimple w:instr=" DATABASE \\d x "/></w:p>'),
    "report.template-field",
  ],
  ["entities that swell", documentOf('<!DOCTYPE a [<!ENTITY b "bb">]><w:document/>'), "report.template-xml"],
  [
    "another encoding",
    documentOf('<?xml version="1.0" encoding="UTF-16"?><w:document/>'),
    "report.template-xml",
  ],
  ["no document at all", zipSync({ "a.txt": strToU8("a") }), "report.template-part-missing"],
  ["no archive", strToU8("not a zip"), "formats.not-zip"],
  ["a path that leads outside", withPart("../outside.xml", "<x/>"), "formats.zip-path"],
  ["a bomb", zipSync({ ...usual, "word/media/a.png": new Uint8Array(60_000_000) }), "formats.zip-swells"],
];

describe("a template from outside", () => {
  test.each(hostile)("with %s is refused with the reason", (_what, bytes, code) => {
    const checked = checkTemplate(bytes, "theirs.docx");
    expect(checked.ok).toBe(false);
    expect(!checked.ok && checked.error.map((issue) => issue.code)).toContain(code);
  });

  test("of ours is taken, also with a link to the web", () => {
    expect(checkTemplate(wordTemplate(), "ours.docx").ok).toBe(true);
    expect(checkTemplate(related("hyperlink", "https://example.invalid/"), "ours.docx").ok).toBe(true);
  });

  test("is told every tag that nothing stands for, before anything is written", async () => {
    const { model } = await sampleReport();
    const bytes = intoBody("<w:p><w:r><w:t>{Job_Name} {no.such} {job_name}</w:t></w:r></w:p>");
    const written = await renderWord(model, bytes);
    expect(
      !written.ok && written.error.map(({ code, values }) => [code, values["found"], values["hint"]]),
    ).toEqual([
      ["report.template-tag-unknown", "Job_Name", " (job_name?)"],
      ["report.template-tag-unknown", "no.such", ""],
    ]);
  });

  test("whose loops do not close is refused", async () => {
    const { model } = await sampleReport();
    const written = await renderWord(model, intoBody("<w:p><w:r><w:t>{#runs} {run}</w:t></w:r></w:p>"));
    expect(written.ok).toBe(false);
  });
});
