import type { ReportModel } from "../model/report-model.ts";
import { pictureMaker } from "../word/draw-picture.ts";

/** The drawings of a report as files: SVG, and PNG for programs that take no vectors. Made one by one as they are asked for. */
export async function reportFigureFiles(
  model: ReportModel,
): Promise<Iterable<readonly [name: string, content: string | Uint8Array]>> {
  const draw = await pictureMaker();
  return filesOf(model, (svg) => draw(svg).png);
}

function* filesOf(
  model: ReportModel,
  png: (svg: string) => Uint8Array,
): Generator<readonly [string, string | Uint8Array]> {
  const taken = new Set<string>();
  for (const { key, svg } of model.figures) {
    const plain = key.replaceAll(/[^\p{L}\p{N}._-]/gu, "_");
    let name = plain;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${plain}-${n}`;
    taken.add(name.toLowerCase());
    yield [`${name}.svg`, svg];
    yield [`${name}.png`, png(svg)];
  }
}
