import {
  appliesTo,
  type CriterionRequest,
  criterion,
  type Decision,
  type DesignElement,
  designAxes,
  type ElementResult,
  elementKind,
  type Language,
} from "#core";
import { sentenceOf } from "#text";
import { figures } from "./registry.ts";
import type { AllowanceView, BudgetView, ElementView, VerdictView } from "./view.ts";

/** What the drawings of one element are made from. */
export interface ElementFiguresInput {
  readonly element: DesignElement;
  readonly result: ElementResult;
  /** all rules of the job; those for the element are picked out */
  readonly criteria: readonly CriterionRequest[];
  /** the rule that was agreed beforehand; captions name its probability */
  readonly decision?: Decision;
  readonly language: Language;
  readonly jobName?: string;
  /** draw the section of the element in the plan as well */
  readonly outline?: boolean;
}

/**
 * All drawings of one element, each as SVG text under its id ("plan", "section", "budget").
 *
 * An element without a path gets its drawings too: they show the design and that nothing was read.
 *
 * Frame: site NED.
 * Source: none.
 */
export function elementFigures(
  input: ElementFiguresInput,
): readonly { readonly id: string; readonly svg: string }[] {
  const view = elementView(input);
  return figures.map((figure) => ({ id: figure.id, svg: figure.draw(view) }));
}

/** What the drawings show of an element, gathered from its design, its result and the rules of the job. */
export function elementView(input: ElementFiguresInput): ElementView {
  const { element, result, language } = input;
  const requests = input.criteria.filter((request) => appliesTo(request, element));
  const { along } = designAxes(element);
  return {
    element,
    kindName: elementKind(element.kind)?.text[language].name ?? element.kind,
    jobName: input.jobName ?? "",
    alongBearingRad: Math.atan2(along.east, along.north),
    axis: result.axis,
    gaps: result.gaps,
    ellipses: result.uncertainty?.ellipses ?? [],
    budget: budgetView(result),
    allowances: requests.flatMap((request) => allowanceView(element, request, language)),
    verdicts: result.verdicts.map((verdict) => verdictView(verdict, input)),
    outline: input.outline ?? false,
    language,
  };
}

function allowanceView(
  element: DesignElement,
  request: CriterionRequest,
  language: Language,
): AllowanceView[] {
  const kind = criterion(request.kind);
  if (kind?.allowanceM === undefined) return [];
  return [
    {
      label: kind.text[language].title,
      allowanceM: (downM, component) => kind.allowanceM?.(element, downM, request, component) ?? Number.NaN,
    },
  ];
}

function budgetView({ axis, uncertainty }: ElementResult): BudgetView | undefined {
  if (uncertainty === undefined) return undefined;
  const u95At = (downM: number) =>
    uncertainty.ellipses[axis.findIndex((row) => row.downM === downM)]?.u95M ?? Number.NaN;
  return {
    places: uncertainty.budget,
    sources: uncertainty.sources,
    u95M: uncertainty.budget.map(({ atDownM }) => u95At(atDownM)),
  };
}

/** Reasons that say no more than the probability and the rule, which a caption always gives. */
const SAID_BY_THE_PROBABILITY = new Set(["criteria.neither-shown", "criteria.within-not-shown"]);

function verdictView(
  verdict: ElementResult["verdicts"][number],
  { language, decision }: ElementFiguresInput,
): VerdictView {
  const isSettled = verdict.verdict === "within" || verdict.verdict === "outside";
  return {
    title: criterion(verdict.kind)?.text[language].title ?? verdict.kind,
    verdict: verdict.verdict,
    value: verdict.value,
    limit: verdict.limit,
    unit: verdict.unit,
    atDownM: verdict.atDownM,
    source: verdict.source,
    standardUncertainty: verdict.standardUncertainty,
    probabilityWithin: verdict.probabilityWithin,
    rule: verdict.rule,
    asked: decision?.probability,
    // the first reason says why nobody can call it; a settled verdict speaks for itself
    reasons: isSettled
      ? []
      : verdict.reasons
          .slice(0, 1)
          .filter(({ code }) => !SAID_BY_THE_PROBABILITY.has(code))
          .map((reason) => sentenceOf(reason, language)),
  };
}
