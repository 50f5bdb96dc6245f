import { type ElementResult, type Job, VERDICTS, type Verdict, type VerdictResult } from "#core";
import {
  formatAgainstLimit,
  formatLevel,
  formatMeasured,
  formatProbability,
  sentenceOf,
  verdictSigns,
  verdictWords,
} from "#text";
import { paintVerdict } from "../terminal/colour.ts";
import { counted } from "../terminal/counted.ts";
import { type Column, tableLines } from "../terminal/table.ts";
import type { Terminal } from "../terminal/terminal.ts";

/** The one that a reader must see first. */
const WORST_FIRST: readonly Verdict[] = ["outside", "too-close-to-call", "not-judged", "within"];
/** For terminals that can show ASCII only; the shapes are those of the figures. */
const ASCII_SIGNS: Readonly<Record<Verdict, string>> = {
  within: "(v)",
  "too-close-to-call": "<?>",
  outside: "[x]",
  "not-judged": "( )",
};

/** True of a rule, not of an element: said once below the table, see `limitsToConfirm`. */
const SAID_ONCE = "criteria.clause-from-memory";
/** A remark that holds for more elements than these is said with their number, not their names. */
const MOST_NAMED = 4;

/** Share of the limit that is used up; a value that is missing comes last. */
const usedUp = (one: VerdictResult): number => {
  const share = one.value / one.limit;
  return Number.isNaN(share) ? Number.NEGATIVE_INFINITY : share;
};

/** The verdict that stands for the element: the worst one, and among equals the one nearest to or furthest over its limit. */
export function governingVerdict(element: ElementResult): VerdictResult | undefined {
  return [...element.verdicts].sort(
    (a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict) || usedUp(b) - usedUp(a),
  )[0];
}

export const verdictOf = (element: ElementResult): Verdict =>
  governingVerdict(element)?.verdict ?? "not-judged";

interface Row {
  readonly element: string;
  readonly verdict: Verdict;
  readonly result: VerdictResult | undefined;
  readonly why: string;
}

/** Which elements have runs that could not be used, and whether every rule is shown or only the governing one. */
export interface ElementTableOptions {
  readonly unusable: ReadonlySet<string>;
  readonly every: boolean;
}

/** One line an element, or with `every` one line for each rule that applies; remarks on settled verdicts below. */
export function elementTable(
  terminal: Terminal,
  elements: readonly ElementResult[],
  options: ElementTableOptions,
): readonly string[] {
  const rows = elements.flatMap((element) => rowsOf(element, options));
  const numbers = ({ result }: Row) =>
    result && formatAgainstLimit(result.value, result.limit, result.unit, "en");
  const table = tableLines<Row>(
    [
      { heading: "Element", cell: (row) => row.element },
      {
        heading: "Verdict",
        cell: (row) => `${sign(terminal, row.verdict)} ${verdictWords.en[row.verdict]}`,
        paint: (row, text) => paintVerdict(terminal, row.verdict, text),
      },
      { heading: "Rule", cell: (row) => row.result?.criterionId ?? "" },
      { heading: "Value", align: "right", cell: (row) => numbers(row)?.value ?? "" },
      ...uncertaintyColumns(rows),
      { heading: "Limit", align: "right", cell: (row) => numbers(row)?.limit ?? "" },
      { heading: "Level", align: "right", cell: ({ result }) => levelText(result) },
      { heading: "", cell: (row) => row.why },
    ],
    rows,
  );
  const remarks = remarkLines(rows);
  return remarks.length > 0 ? [...table, "", ...remarks] : table;
}

/** Half width of the 95 % interval of a normal value, in standard uncertainties. */
const COVERAGE_95 = 1.96;

/** Only where something is known: a column of dashes says nothing. */
function uncertaintyColumns(rows: readonly Row[]): Column<Row>[] {
  const known = rows.some(({ result }) => result?.standardUncertainty !== undefined);
  if (!known) return [];
  return [
    {
      heading: "± (95 %)",
      align: "right",
      cell: ({ result }) =>
        result?.standardUncertainty === undefined
          ? ""
          : formatMeasured(COVERAGE_95 * result.standardUncertainty, result.unit, "en"),
    },
    { heading: "P within", align: "right", cell: ({ result }) => probabilityText(result) },
  ];
}

/** No probability beside a value that is not judged: it would read like a verdict. */
const probabilityText = (result: VerdictResult | undefined): string =>
  result?.probabilityWithin === undefined || result.verdict === "not-judged"
    ? ""
    : formatProbability(result.probabilityWithin, "en");

const levelText = (result: VerdictResult | undefined): string =>
  result && Number.isFinite(result.atDownM) ? formatLevel(-result.atDownM, "en") : "";

const isSettled = (verdict: Verdict): boolean => verdict === "within" || verdict === "outside";

const reasonsOf = (result: VerdictResult): string[] =>
  result.reasons.filter(({ code }) => code !== SAID_ONCE).map((reason) => sentenceOf(reason));

function rowsOf(element: ElementResult, { unusable, every }: ElementTableOptions): Row[] {
  const governing = governingVerdict(element);
  const shown = every ? element.verdicts : governing ? [governing] : [];
  const id = element.elementId;
  if (shown.length === 0) {
    const noRun = unusable.has(id) ? "its run cannot be used, see below" : "no run";
    const why = element.runIds.length === 0 ? noRun : "no rule of the job applies to it";
    return [{ element: id, verdict: "not-judged", result: undefined, why }];
  }
  return shown.map((result) => {
    const why = isSettled(result.verdict) ? "" : reasonsOf(result).join(" ");
    return { element: id, verdict: result.verdict, result, why };
  });
}

/** What is to be said of verdicts that stand: each remark once, with the elements that it is about. */
function remarkLines(rows: readonly Row[]): string[] {
  const about = new Map<string, Set<string>>();
  for (const { element, result } of rows) {
    if (result === undefined || !isSettled(result.verdict)) continue;
    for (const remark of reasonsOf(result)) about.set(remark, (about.get(remark) ?? new Set()).add(element));
  }
  return [...about].map(([remark, elements]) => {
    const names = elements.size > MOST_NAMED ? counted(elements.size, "element") : [...elements].join(", ");
    return `${names}: ${remark}`;
  });
}

const sign = (terminal: Terminal, verdict: Verdict): string =>
  terminal.signs ? verdictSigns[verdict].sign : ASCII_SIGNS[verdict];

/** "68 elements: 60 within, 1 too close to call, 4 outside, 3 not judged." */
export function verdictCounts(elements: readonly ElementResult[]): string {
  const counts = VERDICTS.map((verdict) => {
    const count = elements.filter((element) => verdictOf(element) === verdict).length;
    return `${count} ${verdictWords.en[verdict].toLowerCase()}`;
  });
  return `${counted(elements.length, "element")}: ${counts.join(", ")}.`;
}

/** What must be said wherever limits that nobody has read stand behind a verdict; empty where there are none. */
export function limitsToConfirm(job: Job): readonly string[] {
  const sources = job.criteria.flatMap(({ source }) => (source?.status === "memory" ? [source] : []));
  const named = new Set(
    sources.map(({ document, edition, clause }) =>
      [document, edition, clause && `clause ${clause}`].filter((part) => part).join(", "),
    ),
  );
  if (named.size === 0) return [];
  return [
    "Limits from memory, not from the document: confirm each clause before the verdicts are used.",
    ...[...named].map((name) => `  ${name}`),
  ];
}
