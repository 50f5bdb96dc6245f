import { type CriterionSource, coverageFactor, type Language, type Verdict } from "#core";
import {
  figureWord,
  formatAgainstLimit,
  formatCoverage,
  formatLevel,
  formatMeasured,
  formatProbability,
  formatUncertainty,
  verdictWords,
} from "#text";
import { SIZE } from "./style.ts";
import { tag, text } from "./svg/markup.ts";
import { textWidth, wrapText } from "./svg/text-width.ts";
import { verdictSymbol } from "./verdict-symbol.ts";
import type { ElementView, VerdictView } from "./view.ts";

const CAPTION_LINE = 16;
const SYMBOL_R = 6.5;
const SYMBOL_ROOM = 26;

export interface CaptionBlock {
  readonly height: number;
  draw(top: number): string;
}

interface Caption {
  readonly verdict: Verdict;
  readonly word: string;
  readonly lines: readonly string[];
}

/** The verdicts of an element, one below the other, each with its shape and word; `left` and `right` bound the text. */
export function captionBlock(view: ElementView, left: number, right: number): CaptionBlock {
  const wordRoom = Math.max(
    ...Object.values(verdictWords[view.language]).map((word) => textWidth(word, SIZE.body, true)),
  );
  const textLeft = left + SYMBOL_ROOM + wordRoom + 16;
  const room = right - textLeft;
  const captions: Caption[] = captionContents(view).map(({ verdict, sentence }) => ({
    verdict,
    word: verdictWords[view.language][verdict],
    lines: wrapText(sentence, SIZE.body, room),
  }));
  const rows = captions.map((caption) => Math.max(1, caption.lines.length) * CAPTION_LINE + 5);
  return {
    height: rows.reduce((sum, row) => sum + row, 0) + 6,
    draw: (top) => {
      let y = top + 19;
      const drawn: string[] = [];
      for (const [i, { verdict, word, lines }] of captions.entries()) {
        drawn.push(verdictSymbol(verdict, left + SYMBOL_R + 2, y - 4, SYMBOL_R));
        drawn.push(text(left + SYMBOL_ROOM, y, word, { "font-weight": "bold" }));
        drawn.push(...lines.map((content, n) => text(textLeft, y + n * CAPTION_LINE, content)));
        y += rows[i]!;
      }
      return tag("g", { "data-part": "verdicts" }, ...drawn);
    },
  };
}

function captionContents(view: ElementView): { readonly verdict: Verdict; readonly sentence: string }[] {
  if (view.verdicts.length === 0)
    return [{ verdict: "not-judged", sentence: figureWord("noCriterion", view.language) }];
  return view.verdicts.map((verdict) => ({
    verdict: verdict.verdict,
    sentence: verdictSentence(verdict, view.language),
  }));
}

/** What was measured, what is allowed, where, by which document; or why nothing was judged. */
export function verdictSentence(view: VerdictView, language: Language): string {
  const measured: string[] = [];
  if (Number.isFinite(view.value) && Number.isFinite(view.limit)) {
    const written = formatAgainstLimit(view.value, view.limit, view.unit, language);
    const value = written.value + expandedUncertainty(view, language);
    measured.push(figureWord("against", language, { ...written, value }));
  }
  if (Number.isFinite(view.value) && !Number.isFinite(view.limit))
    measured.push(formatMeasured(view.value, view.unit, language));
  if (measured.length > 0 && Number.isFinite(view.atDownM))
    measured.push(figureWord("atLevel", language, { level: formatLevel(-view.atDownM, language) }));
  const sentence = [measured.join(" "), probabilityAndRule(view, language), ...view.reasons]
    .filter((part) => part !== "")
    .join("; ");
  const source = describeSource(view.source, language);
  return [sentence === "" ? view.title : `${view.title}: ${sentence}`, source]
    .filter((part) => part !== "")
    .join(" ");
}

/** 95 % of a value that spreads normally; where it does not, the probability tells the truth. */
function expandedUncertainty(view: VerdictView, language: Language): string {
  const { standardUncertainty: u } = view;
  if (u === undefined || !Number.isFinite(u)) return "";
  return ` ± ${formatUncertainty(coverageFactor(0.95, 1) * u, view.unit, language)}`;
}

function probabilityAndRule(view: VerdictView, language: Language): string {
  const { probabilityWithin: probability, rule, asked } = view;
  // what was read may be within for sure; of an element that is not judged that would say too much
  if (view.verdict === "not-judged" || probability === undefined || !Number.isFinite(probability)) return "";
  const within = figureWord("probabilityWithin", language, {
    probability: formatProbability(probability, language),
  });
  if (rule === "simple") return `${within}; ${figureWord("ruleSimple", language)}`;
  const name = figureWord(rule === "guarded" ? "ruleGuarded" : "ruleFourWay", language);
  const at =
    asked === undefined
      ? ""
      : ` ${figureWord("ruleAt", language, { asked: formatCoverage(asked, language) })}`;
  return `${within}; ${name}${at}`;
}

function describeSource(source: CriterionSource | undefined, language: Language): string {
  if (source === undefined) return "";
  const { document, edition, clause } = source;
  const named = [
    document,
    ...(edition === undefined ? [] : [figureWord("edition", language, { edition })]),
    ...(clause === undefined ? [] : [figureWord("clause", language, { clause })]),
  ];
  // whoever sees the limit must see that nobody has read its clause yet
  const status = source.status === "memory" ? `; ${figureWord("confirmClause", language)}` : "";
  return `(${named.join(", ")}${status})`;
}
