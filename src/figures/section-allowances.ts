import { line as curve } from "d3-shape";
import type { AxisParts } from "./axis-parts.ts";
import type { SectionPanel } from "./section-panels.ts";
import { allowanceLevels, type SectionScale } from "./section-scale.ts";
import { allowanceLine, INK } from "./style.ts";
import { line, tag } from "./svg/markup.ts";
import type { ElementView } from "./view.ts";

/** Half the height of the end strokes of an allowance that holds at one level only, drawing units. */
const END_STROKE = 6;

/** Allowances to both sides of the design axis: a line where they hold over a stretch, a bar with end strokes where at one level only. */
export function drawSectionAllowances(
  view: ElementView,
  parts: AxisParts,
  scale: SectionScale,
  panel: SectionPanel,
  index: 0 | 1,
): string {
  const levels = allowanceLevels(view, parts);
  const bar = ({ downM, allowedM }: Sample) =>
    allowanceBar(scale.x(index, -allowedM), scale.x(index, allowedM), scale.y(downM));
  return tag(
    "g",
    { "data-part": "allowances" },
    ...view.allowances.map((allowance, i) => {
      const runs = finiteRuns((downM) => allowance.allowanceM(downM, panel.component), levels);
      return runs.map((run) => (run.length > 1 ? envelope(run, scale, index, i) : bar(run[0]!))).join("");
    }),
  );
}

interface Sample {
  readonly downM: number;
  readonly allowedM: number;
}

/** Levels next to each other at which the allowance is known, run by run. */
function finiteRuns(allowed: (downM: number) => number, levels: readonly number[]): Sample[][] {
  const runs: Sample[][] = [];
  let open = false;
  for (const downM of levels) {
    const allowedM = allowed(downM);
    const known = Number.isFinite(allowedM) && allowedM >= 0;
    if (known && !open) runs.push([]);
    if (known) runs.at(-1)!.push({ downM, allowedM });
    open = known;
  }
  return runs;
}

function envelope(run: readonly Sample[], scale: SectionScale, panel: 0 | 1, index: number): string {
  return [-1, 1]
    .map((side) => {
      const path = curve<Sample>(
        (sample) => scale.x(panel, side * sample.allowedM),
        (sample) => scale.y(sample.downM),
      ).digits(2);
      return tag("path", { d: path(run)!, ...allowanceLine(index), "data-side": side });
    })
    .join("");
}

/** Two upright strokes: an allowance at one level. */
export function allowanceBar(left: number, right: number, y: number): string {
  return [left, right]
    .map((x) => line(x, y - END_STROKE, x, y + END_STROKE, { stroke: INK, "stroke-width": 2.6 }))
    .join("");
}
