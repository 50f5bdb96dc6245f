import type {
  AxisRow,
  BudgetEntry,
  Calibration,
  CriterionSource,
  DecisionRuleName,
  DesignElement,
  ElementUncertaintyResult,
  Language,
  OffsetEllipse,
  Verdict,
} from "#core";

/** An allowance as it applies by level. */
export interface AllowanceView {
  readonly label: string;
  /**
   * allowed offset at that level, metres; NaN where the rule says nothing about the level. `downM` = -level. With a component: of
   * that part of the offset, where the rule has one for each; without: the larger one.
   */
  allowanceM(downM: number, component?: "along" | "across"): number;
}

/** One verdict as the caption shows it. */
export interface VerdictView {
  readonly title: string;
  readonly verdict: Verdict;
  /** NaN where nothing was measured */
  readonly value: number;
  readonly limit: number;
  /** unit of value and limit, as the criterion has it */
  readonly unit: string;
  readonly atDownM: number;
  readonly source: CriterionSource | undefined;
  /** unit of the value; undefined where it is not known */
  readonly standardUncertainty: number | undefined;
  /** that the true value keeps its limit, [0, 1]; undefined where it is not known */
  readonly probabilityWithin: number | undefined;
  /** the rule that was really used */
  readonly rule: DecisionRuleName;
  /** probability that the rule asks for; undefined where it is not known */
  readonly asked: number | undefined;
  /** why it was not judged, in sentences */
  readonly reasons: readonly string[];
}

/** What the uncertainty of an element is made of. */
export interface BudgetView {
  readonly places: ElementUncertaintyResult["budget"];
  /** standard values that were used */
  readonly sources: readonly BudgetEntry[];
  /** radius that holds the true point with 95 %, in the order of `places`, metres */
  readonly u95M: readonly number[];
}

/** All that the drawings of one element show. They are drawn from this and compute nothing that could change a verdict. */
export interface ElementView {
  readonly element: DesignElement;
  readonly kindName: string;
  readonly jobName: string;
  /** bearing of "along", radians from grid north */
  readonly alongBearingRad: number;
  /** from the head down; rows that are not interpolated are stations */
  readonly axis: readonly AxisRow[];
  /** stretches that were not read, metres along the axis */
  readonly gaps: readonly { readonly fromM: number; readonly toM: number }[];
  /** uncertainty of the rows of `axis`, in their order; empty where it is not known */
  readonly ellipses: readonly OffsetEllipse[];
  /** undefined where the uncertainty is not known */
  readonly budget: BudgetView | undefined;
  readonly allowances: readonly AllowanceView[];
  readonly verdicts: readonly VerdictView[];
  /** draw the section of the element in the plan, at true scale; the offsets become small beside it */
  readonly outline: boolean;
  readonly language: Language;
}

/** What the drawings of one calibration show. */
export interface CalibrationView {
  readonly calibration: Calibration;
  readonly jobName: string;
  readonly language: Language;
}

/** A kind of drawing of a calibration; `draw` gives undefined for calibrations that it says nothing of. */
export interface CalibrationFigure {
  readonly id: string;
  readonly text: Readonly<Record<Language, { readonly title: string }>>;
  draw(view: CalibrationView): string | undefined;
}

/** A kind of drawing. It declares its words and how it is drawn; the registry lists it. */
export interface Figure {
  readonly id: string;
  readonly text: Readonly<Record<Language, { readonly title: string }>>;
  draw(view: ElementView): string;
}
