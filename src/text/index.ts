// The door of the layer: what other layers may use, listed one by one.

export { type FigureWord, figureWord, fillIn } from "./figure-words.ts";
export { translatedPhrases } from "./findings/german/phrases.ts";
export {
  formatAgainstLimit,
  formatMeasured,
  formatUncertainty,
  shownAs,
  type UnitSystem,
} from "./format-against-limit.ts";
export { formatNumber, MISSING } from "./format-number.ts";
export { formatCoverage, formatProbability } from "./format-probability.ts";
export {
  type DisplayUnit,
  formatBearing,
  formatDepth,
  formatLevel,
  formatOffset,
  formatQuantity,
  formatTwoDigits,
} from "./format-quantity.ts";
export { formatRatio, formatRatioOneIn } from "./format-ratio.ts";
export { sentenceCodes, sentenceOf } from "./sentence-of.ts";
export { version } from "./version.ts";
export { severityWords, type VerdictShape, verdictSigns, verdictWords } from "./words.ts";
