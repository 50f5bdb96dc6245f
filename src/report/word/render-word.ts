import { fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { codeDrawing } from "../code-drawing.ts";
import type { ReportModel } from "../model/report-model.ts";
import { readAsset } from "../read-asset.ts";
import { unknownTags } from "./check-tags.ts";
import { checkTemplate } from "./check-template.ts";
import { pictureMaker } from "./draw-picture.ts";
import { finishWord, placeholder } from "./finish-word.ts";
import { wordView } from "./word-view.ts";

const NAME = "template.docx";

/** The usual template, as a Word document to be edited. */
export const wordTemplate = (): Uint8Array => new Uint8Array(readAsset("default-template.docx"));

/**
 * The report in a Word template. The template is data: it is checked before anything is done with it, and nothing in it is run.
 *
 * Errors: those of checkTemplate, report.template-tag-unknown, report.template-tag-open, report.word-not-made.
 */
export async function renderWord(
  model: ReportModel,
  template: Uint8Array,
): Promise<Result<Uint8Array, readonly Issue[]>> {
  const checked = checkTemplate(template, NAME);
  if (!checked.ok) return checked;
  const { TemplateHandler } = await import("easy-template-x");
  const handler = new TemplateHandler();
  const file = Buffer.from(template);
  const tags = await attempt(() => handler.parseTags(file));
  if (!tags.ok) return fail([issue("report.template-tag-open", tags.error)]);
  const unknown = unknownTags(tags.value, NAME);
  if (unknown.length > 0) return fail(unknown);
  const draw = await pictureMaker();
  const drawings: string[] = [];
  const view = wordView(
    model,
    (svg) => {
      drawings.push(svg);
      return { source: placeholder(drawings.length - 1), shape: shapeOf(svg) };
    },
    codeDrawing(model.codeText),
  );
  const written = await attempt(() => handler.process(file, view));
  if (!written.ok) return fail([issue("report.word-not-made", written.error)]);
  return ok(finishWord(new Uint8Array(written.value), drawings, (svg) => draw(svg).png));
}

/** Height of a drawing in parts of its width. */
function shapeOf(svg: string): number {
  const [, width = "1", height = "1"] = /viewBox="\S+ \S+ (\S+) ([^"\s]+)"/.exec(svg) ?? [];
  return Number(height) / Number(width);
}

const issue = (code: string, reason: string): Issue => ({
  code,
  severity: "error",
  place: { file: NAME },
  values: { reason },
});
