import {
  appliesTo,
  type CriterionRequest,
  criterion,
  type DesignElement,
  designAxes,
  type ElementResult,
  elementKind,
  type Language,
} from "#core";
import { sentenceOf } from "#text";
import { figures } from "./registry.ts";
import type { AllowanceView, ElementView, VerdictView } from "./view.ts";

/** What the drawings of one element are made from. */
export interface ElementFiguresInput {
  readonly element: DesignElement;
  readonly result: ElementResult;
  /** all rules of the job; those for the element are picked out */
  readonly criteria: readonly CriterionRequest[];
  readonly language: Language;
  readonly jobName?: string;
  /** draw the section of the element in the plan as well */
  readonly outline?: boolean;
}

/**
 * All drawings of one element, each as SVG text under its id ("plan", "section").
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
    allowances: requests.flatMap((request) => allowanceView(element, request, language)),
    verdicts: result.verdicts.map((verdict) => verdictView(verdict, language)),
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
      allowanceM: (downM) => kind.allowanceM?.(element, downM, request) ?? Number.NaN,
    },
  ];
}

function verdictView(verdict: ElementResult["verdicts"][number], language: Language): VerdictView {
  const isSettled = verdict.verdict === "within" || verdict.verdict === "outside";
  return {
    title: criterion(verdict.kind)?.text[language].title ?? verdict.kind,
    verdict: verdict.verdict,
    value: verdict.value,
    limit: verdict.limit,
    unit: verdict.unit,
    atDownM: verdict.atDownM,
    source: verdict.source,
    // the first reason says why nobody can call it; a settled verdict speaks for itself
    reasons: isSettled ? [] : verdict.reasons.slice(0, 1).map(sentenceOf),
  };
}
