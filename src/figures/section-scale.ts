import type { AxisParts } from "./axis-parts.ts";
import { roundFactor } from "./offset-scale.ts";
import { BODY_TOP } from "./page.ts";
import { sectionPanels } from "./section-panels.ts";
import { ellipseLookup, lineBand95 } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

const HEIGHT = 452;
const PANEL_TOP = BODY_TOP + 34;
export const PANEL_WIDTH = 208;
const PANEL_LEFT = [76, 302] as const;

/** Empty part above the head and below the toe, as a share of the height. */
const RIM = 0.035;
/** Share of the half panel that the largest offset may take. */
const USED = 0.9;
const SMALLEST_OFFSET_M = 0.01;
const SMALLEST_HEIGHT_M = 1;
/** Levels closer than this are one level, metres. */
const SAME_LEVEL_M = 1e-6;
/** An allowance this many times larger than the offsets may run out of the panel. */
const LARGEST_RATIO = 4;

export interface SectionScale {
  /** how many times offsets are drawn larger than levels: a round number */
  readonly factor: number;
  /** offset at the edge of a panel, metres */
  readonly halfM: number;
  readonly fromDownM: number;
  readonly toDownM: number;
  readonly top: number;
  readonly bottom: number;
  readonly left: readonly [number, number];
  x(panel: 0 | 1, offsetM: number): number;
  y(downM: number): number;
}

/** Levels at which an allowance is looked up: where rows are, at head, cut-off and toe, and where a verdict was reached. From the top down. */
export function allowanceLevels(view: ElementView, parts: AxisParts): number[] {
  const { head, cutoffDownM, toeDownM } = view.element;
  const levels = [
    head.down,
    cutoffDownM,
    toeDownM,
    ...parts.rows.map((row) => row.downM),
    ...view.verdicts.map(({ atDownM }) => atDownM),
  ];
  const sorted = levels
    .filter((downM) => downM !== undefined)
    .filter(Number.isFinite)
    .sort((p, q) => p - q);
  return sorted.filter((downM, i) => i === 0 || downM - sorted[i - 1]! > SAME_LEVEL_M);
}

/** Fits the element into the panels. */
export function sectionScale(view: ElementView, parts: AxisParts): SectionScale {
  const levels = allowanceLevels(view, parts);
  const [from, to] = [Math.min(...levels), Math.max(...levels)];
  const missing = Math.max(0, SMALLEST_HEIGHT_M - (to - from));
  const rim = (to + missing - from) * RIM;
  const [fromDownM, toDownM] = [from - rim, to + missing + rim];
  const unitsPerM = HEIGHT / (toDownM - fromDownM);

  const ellipseOf = ellipseLookup(view);
  const offsets = parts.rows.flatMap((row) => {
    const ellipse = ellipseOf(row);
    return sectionPanels(view).map(
      (panel) =>
        Math.abs(panel.offsetM(row)) + (ellipse === undefined ? 0 : lineBand95(ellipse, panel.fromAlongRad)),
    );
  });
  const largest = Math.max(0, ...offsets);
  const reachM = Math.max(SMALLEST_OFFSET_M, largest, shownAllowanceM(view, levels, largest));
  const factor = roundFactor((USED * PANEL_WIDTH) / 2 / (reachM * unitsPerM));
  const across = factor * unitsPerM;
  return {
    factor,
    halfM: PANEL_WIDTH / 2 / across,
    fromDownM,
    toDownM,
    top: PANEL_TOP,
    bottom: PANEL_TOP + HEIGHT,
    left: PANEL_LEFT,
    x: (panel, offsetM) => PANEL_LEFT[panel] + PANEL_WIDTH / 2 + offsetM * across,
    y: (downM) => PANEL_TOP + (downM - fromDownM) * unitsPerM,
  };
}

/** The largest allowance that is drawn in full: all of them, unless that would make the offsets too small to see. */
function shownAllowanceM(view: ElementView, levels: readonly number[], largestOffsetM: number): number {
  const largestOfEach = view.allowances
    .map(({ allowanceM }) => Math.max(0, ...levels.map((downM) => allowanceM(downM)).filter(Number.isFinite)))
    .filter((value) => value > 0);
  if (largestOfEach.length === 0) return 0;
  return Math.min(
    Math.max(...largestOfEach),
    Math.max(LARGEST_RATIO * largestOffsetM, Math.min(...largestOfEach)),
  );
}
