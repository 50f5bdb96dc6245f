import type { Language, Verdict } from "#core";
import type { UnitSystem } from "#text";

export const REPORT_FORMAT = "toeline-report/1";

/** How far a report has come. */
export type ReportStatus = "draft" | "for-review" | "issued" | "withdrawn";
export const REPORT_STATUSES: readonly ReportStatus[] = ["draft", "for-review", "issued", "withdrawn"];

/** What a signature says. */
export type SignatureMeaning = "tested" | "checked" | "approved" | "accepted";
export const SIGNATURE_MEANINGS: readonly SignatureMeaning[] = ["tested", "checked", "approved", "accepted"];

export interface Signature {
  readonly meaning: SignatureMeaning;
  readonly name: string;
  /** e.g. "surveyor"; empty where it is not given */
  readonly role?: string;
  /** ISO 8601 date or time */
  readonly at: string;
}

/** Head of the evidence log that the report rests on. */
export interface LogHead {
  /** entries that the log held */
  readonly size: number;
  /** hex */
  readonly root: string;
  /** hex, for the foot of each page and the code on the cover */
  readonly fingerprint: string;
}

/** A raw file that the report rests on. */
export interface RawFile {
  readonly name: string;
  readonly bytes: number;
  /** hex */
  readonly sha256: string;
}

/** Who, what and which: everything on the cover. Only number, revision, status and date must be given. */
export interface ReportIdentity {
  readonly number: string;
  readonly revision: string;
  readonly status: ReportStatus;
  /** ISO 8601 date of this revision */
  readonly date: string;
  readonly title?: string;
  readonly client?: string;
  readonly site?: string;
  readonly contract?: string;
  readonly structure?: string;
  readonly mainContractor?: string;
  readonly contractor?: string;
  readonly designer?: string;
  readonly orderedBy?: string;
  readonly author?: string;
  readonly headSurvey?: string;
  readonly conditions?: string;
  readonly deviations?: readonly string[];
  readonly signatures?: readonly Signature[];
  readonly head?: LogHead;
  /** the report that this one takes the place of */
  readonly supersedes?: string;
}

/**
 * One cell of a table: the finished text, and beside it the number that it was made from, in SI and unrounded, so that a reader or
 * a test can hold one against the other.
 */
export interface Cell {
  readonly text: string;
  readonly value?: number;
  readonly verdict?: Verdict;
}

export interface Column {
  /** what stands in the column, in one word: its tag in Word templates */
  readonly key: string;
  readonly head: string;
  /** stands in the head, never in the cells */
  readonly unit?: string;
  readonly align: "left" | "right" | "center";
  /** share of the width; without, as wide as its content */
  readonly share?: number;
}

export interface TableBlock {
  readonly kind: "table";
  readonly id: string;
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  readonly note?: string;
  /** for tables with many narrow columns */
  readonly small?: boolean;
}

export interface FigureBlock {
  readonly kind: "figure";
  /** key into `figures` of the model */
  readonly figure: string;
  readonly caption: string;
}

/** Lines of a name and a value. */
export interface FactsBlock {
  readonly kind: "facts";
  readonly rows: readonly { readonly name: string; readonly value: string }[];
  /** in two halves beside each other */
  readonly halves?: boolean;
}

export interface SignatureLine {
  readonly meaning: SignatureMeaning;
  readonly meaningText: string;
  readonly name: string;
  readonly role: string;
  readonly at: string;
}

export type Block =
  | { readonly kind: "heading"; readonly level: 2 | 3; readonly text: string; readonly newPage?: boolean }
  | { readonly kind: "paragraph"; readonly text: string }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | FactsBlock
  | { readonly kind: "callout"; readonly title: string; readonly items: readonly string[] }
  | { readonly kind: "tally"; readonly counts: readonly VerdictCount[] }
  | { readonly kind: "key" }
  | { readonly kind: "signatures"; readonly lines: readonly SignatureLine[] }
  | TableBlock
  | FigureBlock;

export interface VerdictCount {
  readonly verdict: Verdict;
  readonly word: string;
  readonly count: number;
}

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A drawing, as SVG text, with words for those who cannot see it. */
export interface ReportFigure {
  readonly key: string;
  readonly elementId: string | undefined;
  readonly kind: string;
  readonly title: string;
  readonly alt: string;
  readonly svg: string;
}

/** One rule held against one element, as it is written. */
export interface VerdictLine {
  readonly criterionId: string;
  readonly rule: string;
  readonly verdict: Verdict;
  readonly word: string;
  readonly value: Cell;
  readonly uncertainty: Cell;
  readonly limit: Cell;
  readonly level: Cell;
  readonly probability: Cell;
  /** decision rule that was really used */
  readonly decision: string;
  readonly source: string;
  readonly reasons: readonly string[];
}

/** One level of the as-built axis, as it is written; cells in the order of `stationColumns`. */
export interface StationLine {
  readonly cells: readonly Cell[];
  readonly interpolated: boolean;
}

export interface RunLine {
  readonly id: string;
  readonly elementId: string;
  readonly tube: string;
  readonly instrument: string;
  readonly operator: string;
  readonly started: string;
  readonly measures: string;
  readonly stations: Cell;
  readonly depth: Cell;
  readonly misclosure: Cell;
  readonly misclosureLimit: Cell;
  readonly state: string;
  readonly file: string;
}

export interface ReportElement {
  readonly id: string;
  readonly kind: string;
  readonly group: string;
  readonly verdict: Verdict;
  readonly word: string;
  /** the rule that decides: the worst, and among equals the one nearest to its limit; undefined where none applies */
  readonly governing: VerdictLine | undefined;
  /** why it is not judged, where no rule says so */
  readonly remark: string;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  readonly verdicts: readonly VerdictLine[];
  readonly stations: readonly StationLine[];
  readonly places: readonly (readonly Cell[])[];
  readonly runs: readonly RunLine[];
  readonly figures: readonly string[];
  readonly findings: readonly string[];
}

/** What changed since the revision before. */
export interface Change {
  readonly what: string;
  readonly was: string;
  readonly is: string;
}

/**
 * A whole report as plain data: every renderer (Word, PDF, page, workbook) writes what stands here and computes nothing.
 */
export interface ReportModel {
  readonly format: typeof REPORT_FORMAT;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly program: string;
  readonly jobName: string;
  readonly identity: ReportIdentity;
  readonly title: string;
  readonly statusText: string;
  readonly dateText: string;
  readonly numberText: string;
  readonly revisionText: string;
  readonly cover: readonly { readonly name: string; readonly value: string }[];
  readonly tally: readonly VerdictCount[];
  readonly elements: readonly ReportElement[];
  readonly stationColumns: readonly Column[];
  readonly placeColumns: readonly Column[];
  readonly sections: readonly Section[];
  readonly figures: readonly ReportFigure[];
  readonly signatures: readonly SignatureLine[];
  readonly changes: readonly Change[];
  readonly cautions: readonly string[];
  readonly disclaimers: readonly string[];
  /** hex; empty where there is none */
  readonly fingerprint: string;
  /** what the code on the cover says */
  readonly codeText: string;
}
