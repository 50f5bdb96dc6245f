import type { SourceShare } from "#core";
import { figureWord } from "#text";
import { axisParts } from "./axis-parts.ts";
import { sourceName, standardValue } from "./budget-words.ts";
import { markedPlaces } from "./places.ts";
import type { ElementView } from "./view.ts";

/** Sources below this share at every place are drawn together. */
const LEAST_SHARE = 0.005;
const MOST_ROWS = 14;

/** A place at which the budget is shown. */
export interface BudgetColumn {
  readonly name: string;
  readonly downM: number;
  readonly shares: readonly SourceShare[];
  /** all sources together, one standard deviation, along and across together, metres */
  readonly standardM: number;
  readonly u95M: number;
}

interface Part {
  readonly share: number;
  readonly standardM: number;
}

/** A source with its part at each place. */
export interface BudgetRow {
  readonly id: string;
  readonly name: string;
  /** standard value, and where it comes from */
  readonly detail: string;
  readonly parts: readonly Part[];
}

/** Toe and worst level, or one where they are the same; none where nothing acts. */
export function shownColumns(view: ElementView): readonly BudgetColumn[] {
  const { budget, language } = view;
  if (budget === undefined) return [];
  const word = (place: "toe" | "worst") => figureWord(place === "toe" ? lowestWord(view) : "worst", language);
  const columns = budget.places.map(({ place, atDownM, shares }, i) => ({
    name: word(place),
    downM: atDownM,
    shares,
    standardM: Math.hypot(...shares.map(({ standardM }) => standardM)),
    u95M: budget.u95M[i] ?? Number.NaN,
  }));
  const acting = columns.filter(({ standardM }) => standardM > 0);
  const [first, second] = acting;
  if (first === undefined || second === undefined || first.downM !== second.downM) return acting;
  return [{ ...first, name: figureWord("alsoWorst", language, { place: first.name }) }];
}

/** The lowest row of the axis is the toe only where the readings reach it. */
function lowestWord(view: ElementView): "toe" | "lowestReading" {
  const parts = axisParts(view);
  return markedPlaces(view, parts).some(
    ({ position, name }) => position === "toe" && name === figureWord("toe", view.language),
  )
    ? "toe"
    : "lowestReading";
}

/** Sources, the largest first; what is left of them in one row at the end. */
export function budgetRows(view: ElementView, columns: readonly BudgetColumn[]): readonly BudgetRow[] {
  const sources = [...new Set(columns.flatMap(({ shares }) => shares.map(({ source }) => source)))];
  const partsOf = (source: string): readonly Part[] =>
    columns.map(({ shares }) => shares.find((each) => each.source === source) ?? { share: 0, standardM: 0 });
  const ranked = sources
    .map((source) => ({ source, parts: partsOf(source) }))
    .map((each) => ({ ...each, most: Math.max(...each.parts.map(({ share }) => share)) }))
    .filter(({ most }) => most > 0)
    .toSorted((a, b) => b.most - a.most);
  const large = ranked.filter(({ most }, i) => most >= LEAST_SHARE && i < MOST_ROWS);
  // a row for the rest is no shorter than the one source in it
  const shown = ranked.length - large.length === 1 ? ranked : large;
  const rest = ranked.slice(shown.length);
  const rows = shown.map(({ source, parts }) => ({
    id: source,
    name: sourceName(source, view.language),
    detail: standardValue(view, source),
    parts,
  }));
  return rest.length === 0 ? rows : [...rows, restRow(view, rest)];
}

function restRow(view: ElementView, rest: readonly { readonly parts: readonly Part[] }[]): BudgetRow {
  const { language } = view;
  const parts = rest[0]!.parts.map((_, i) => ({
    share: rest.reduce((sum, each) => sum + each.parts[i]!.share, 0),
    standardM: Math.hypot(...rest.map((each) => each.parts[i]!.standardM)),
  }));
  return {
    id: "rest",
    name: figureWord("budgetRest", language, { count: String(rest.length) }),
    detail: "",
    parts,
  };
}
