// The door of the layer: what other layers may use, listed one by one.
export { allanFigure } from "./allan-figure.ts";
export { budgetFigure } from "./budget-figure.ts";
export { halvingSentences, sourceName, standardValueOrigin, writeStandardValue } from "./budget-words.ts";
export { type ElementFiguresInput, elementFigures, elementView } from "./element-figures.ts";
export { planFigure } from "./plan-figure.ts";
export { calibrationFigures, figures } from "./registry.ts";
export { sectionFigure } from "./section-figure.ts";
export { verdictSymbol } from "./verdict-symbol.ts";
export type {
  AllowanceView,
  BudgetView,
  CalibrationFigure,
  CalibrationView,
  ElementView,
  Figure,
  VerdictView,
} from "./view.ts";
