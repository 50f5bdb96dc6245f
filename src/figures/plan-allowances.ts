import { type FigureWord, figureWord } from "#text";
import type { AxisParts } from "./axis-parts.ts";
import type { ElementView } from "./view.ts";

export interface AllowanceCircle {
  readonly radiusM: number;
  /** where it applies; undefined = at all levels shown */
  readonly place: string | undefined;
  /** false where it is so much larger than the offsets that drawing it would hide them */
  readonly drawn: boolean;
}

export interface PlanAllowance {
  readonly label: string;
  readonly circles: readonly AllowanceCircle[];
  readonly index: number;
}

/** A circle may be this much larger than what else is drawn before it is only named. */
const LARGEST_RATIO = 4;
/** Radii closer than this are one circle, metres. */
const SAME_M = 0.0005;

/** Allowances at head, cut-off and toe (or lowest reading), as circles round the design axis. */
export function planAllowances(view: ElementView, parts: AxisParts): PlanAllowance[] {
  const { head, cutoffDownM, toeDownM } = view.element;
  const bottom = toeDownM ?? parts.rows.at(-1)?.downM;
  const levels: readonly { readonly downM: number; readonly word: FigureWord }[] = [
    cutoffDownM === undefined ? { downM: head.down, word: "head" } : { downM: cutoffDownM, word: "cutoff" },
    ...(bottom === undefined
      ? []
      : [{ downM: bottom, word: toeDownM === undefined ? ("lowestReading" as const) : ("toe" as const) }]),
  ];
  const found = view.allowances.map(({ label, allowanceM }, index) => ({
    label,
    index,
    circles: levels
      .map(({ downM, word }) => ({
        radiusM: allowanceM(downM),
        place: figureWord(word, view.language),
      }))
      .filter(({ radiusM }) => Number.isFinite(radiusM) && radiusM > 0),
  }));
  const largestOfEach = found
    .filter(({ circles }) => circles.length > 0)
    .map(({ circles }) => Math.max(...circles.map(({ radiusM }) => radiusM)));
  const offsets = parts.rows.map((row) => row.offsetM);
  const largest = Math.max(LARGEST_RATIO * Math.max(0, ...offsets), Math.min(...largestOfEach));
  return found
    .filter(({ circles }) => circles.length > 0)
    .map(({ label, index, circles }) => {
      const [first, second] = circles;
      const alike =
        circles.length === 2 && Math.abs(first!.radiusM - second!.radiusM) < SAME_M
          ? [{ radiusM: first!.radiusM, place: undefined }]
          : circles;
      return {
        label,
        index,
        circles: alike.map((circle) => ({ ...circle, drawn: circle.radiusM <= largest })),
      };
    });
}
