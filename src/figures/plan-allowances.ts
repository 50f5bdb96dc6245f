import type { Language } from "#core";
import { type FigureWord, figureWord, formatLevel, formatOffset } from "#text";
import type { AxisParts } from "./axis-parts.ts";
import type { AllowanceView, ElementView } from "./view.ts";

export interface AllowanceCircle {
  /** of the circle, or of the one round the rectangle */
  readonly radiusM: number;
  /** half sides of a rectangle round the design axis, where along and across have limits of their own */
  readonly rectangle: { readonly alongM: number; readonly acrossM: number } | undefined;
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

interface Level {
  readonly downM: number;
  readonly place: string;
}

/** Where circles are asked for first: cut-off (or head) and toe (or lowest reading). */
function usualLevels(view: ElementView, parts: AxisParts): Level[] {
  const { head, cutoffDownM, toeDownM } = view.element;
  const named = (word: FigureWord, downM: number | undefined): Level[] =>
    downM === undefined ? [] : [{ downM, place: figureWord(word, view.language) }];
  return [
    ...(cutoffDownM === undefined ? named("head", head.down) : named("cutoff", cutoffDownM)),
    ...(toeDownM === undefined ? named("lowestReading", parts.rows.at(-1)?.downM) : named("toe", toeDownM)),
  ];
}

/** Where else an allowance may hold that says nothing of the usual levels: the head, and where a verdict was reached. */
function otherLevels(view: ElementView): Level[] {
  const { head } = view.element;
  return [
    { downM: head.down, place: figureWord("head", view.language) },
    ...view.verdicts
      .filter(({ atDownM }) => Number.isFinite(atDownM))
      .map(({ atDownM }) => ({ downM: atDownM, place: formatLevel(-atDownM, view.language) })),
  ];
}

function shapeAt(allowance: AllowanceView, downM: number): Pick<AllowanceCircle, "radiusM" | "rectangle"> {
  const alongM = allowance.allowanceM(downM, "along");
  const acrossM = allowance.allowanceM(downM, "across");
  return Math.abs(alongM - acrossM) > SAME_M
    ? { radiusM: Math.hypot(alongM, acrossM), rectangle: { alongM, acrossM } }
    : { radiusM: allowance.allowanceM(downM), rectangle: undefined };
}

/** What an allowance allows: the radius, or along and across. */
export function allowanceText(
  { radiusM, rectangle }: Pick<AllowanceCircle, "radiusM" | "rectangle">,
  language: Language,
): string {
  if (rectangle === undefined) return formatOffset(radiusM, language);
  return figureWord("alongAcross", language, {
    along: formatOffset(rectangle.alongM, language),
    across: formatOffset(rectangle.acrossM, language),
  });
}

function circlesOf(allowance: AllowanceView, view: ElementView, parts: AxisParts) {
  const at = (levels: readonly Level[]) =>
    levels
      .map(({ downM, place }) => ({ ...shapeAt(allowance, downM), place }))
      .filter(({ radiusM }) => Number.isFinite(radiusM) && radiusM > 0);
  const usual = at(usualLevels(view, parts));
  const [first, second] = usual;
  if (first === undefined) return at(otherLevels(view)).slice(0, 1);
  const isOne = second !== undefined && Math.abs(first.radiusM - second.radiusM) < SAME_M;
  return isOne ? [{ ...first, place: undefined }] : usual;
}

/** Allowances as circles round the design axis, for those that say something of a level that is shown. */
export function planAllowances(view: ElementView, parts: AxisParts): PlanAllowance[] {
  const found = view.allowances
    .map((allowance, index) => ({
      label: allowance.label,
      index,
      circles: circlesOf(allowance, view, parts),
    }))
    .filter(({ circles }) => circles.length > 0);
  const largestOfEach = found.map(({ circles }) => Math.max(...circles.map(({ radiusM }) => radiusM)));
  const offsets = parts.rows.map((row) => row.offsetM);
  const largest = Math.max(LARGEST_RATIO * Math.max(0, ...offsets), Math.min(...largestOfEach));
  return found.map((allowance) => ({
    ...allowance,
    circles: allowance.circles.map((circle) => ({ ...circle, drawn: circle.radiusM <= largest })),
  }));
}
