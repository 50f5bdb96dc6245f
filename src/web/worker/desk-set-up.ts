// What the screens that set a job up ask of the worker: schedule and allowances.

import type {
  CriterionRequest,
  CriterionSource,
  Decision,
  DesignElement,
  Issue,
  Language,
  Result,
  Verdict,
} from "#core";
import type { ElementRow, InputFile, NewStatement } from "./desk.ts";

/** Cells as they were typed, by heading. An empty text empties the cell. */
export type TypedRow = Readonly<Record<string, string>>;

/** Where proposed lines of the schedule come from. */
export type ScheduleInput =
  /** files that were dropped, or what was pasted, as a file */
  | { readonly from: "files"; readonly files: readonly InputFile[]; readonly fill?: TypedRow }
  | { readonly from: "typed"; readonly table: "elements" | "tubes"; readonly rows: readonly TypedRow[] }
  /** the same cells set in many elements that are there */
  | { readonly from: "edit"; readonly elements: readonly string[]; readonly set: TypedRow };

/** Elements whose easting and northing are to be exchanged before they are read. */
export type Swap = "none" | "all" | readonly string[];

/** A line as it was understood. */
export interface ProposedElement {
  readonly line: number;
  readonly change: "new" | "changed" | "same" | "put-back";
  /** headings of the cells that change */
  readonly fields: readonly string[];
  /** false: a problem of its own keeps it out until that is mended */
  readonly isTaken: boolean;
  readonly row: ElementRow;
}

/** What was understood of a proposed schedule, before anything is written. */
export interface ScheduleProposal {
  readonly elements: readonly ProposedElement[];
  readonly tubes: number;
  /** lines with a problem, which stay out */
  readonly leftOut: number;
  readonly findings: readonly Issue[];
  /** headings that were taken for one of ours: [as written, as read] */
  readonly headings: readonly (readonly [string, string])[];
  /** headings that the schedule cannot do without and does not have */
  readonly lacking: readonly string[];
  /** elements whose coordinates look exchanged; "all" where the whole schedule does */
  readonly looksSwapped: Swap;
  /** to be written if it is accepted */
  readonly statements: readonly NewStatement[];
  /** takes it back afterwards */
  readonly undo: readonly NewStatement[];
}

/** A rule as a form has it: values in the units of its parameters. */
export interface RuleDraft {
  readonly id: string;
  readonly kind: string;
  readonly appliesTo: CriterionRequest["appliesTo"];
  readonly numbers: CriterionRequest["numbers"];
  readonly words: CriterionRequest["words"];
  readonly tables: CriterionRequest["tables"];
  readonly source: CriterionSource | undefined;
}

/** The allowance of a rule by depth, for its picture. */
export interface AllowancePicture {
  /** undefined: an imagined plumb element stands for those that are not there yet */
  readonly element: DesignElement["id"] | undefined;
  readonly lengthM: number;
  /** from the commencing surface down, where the rule says something: one point for a rule about one level */
  readonly points: readonly { readonly depthM: number; readonly levelM: number; readonly allowedM: number }[];
}

/** A rule as its card shows it. */
export interface RuleView extends RuleDraft {
  readonly sentence: string;
  /** index of the ready-made set that brings it, where the job names the set and not the rule */
  readonly ofSet: number | undefined;
  /** how many elements it is for */
  readonly applies: number;
  /** verdicts of this rule alone, as far as they are worked out */
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly picture: AllowancePicture | undefined;
}

export interface AllowancesView {
  readonly rules: readonly RuleView[];
  readonly decision: Decision;
  readonly elements: number;
  /** words that `appliesTo` can name, by key: kinds, groups, roles, elements of the schedule */
  readonly words: Readonly<Record<string, readonly string[]>>;
}

/** A ready-made set as it can be chosen. */
export interface RuleSetView {
  readonly id: string;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  /** names of the kinds of element that the document means */
  readonly kinds: readonly string[];
  /** elements of the job of these kinds */
  readonly applies: number;
  readonly mustConfirm: boolean;
  readonly notes: readonly string[];
  readonly rules: readonly (RuleDraft & { readonly sentence: string })[];
}

/** A rule that is not written yet. */
export interface RulePreview {
  /** undefined while there are faults */
  readonly sentence: string | undefined;
  readonly faults: readonly Issue[];
  readonly applies: number;
  readonly picture: AllowancePicture | undefined;
}

/** What the verdicts would be. */
export interface Trial {
  /** those that have been surveyed: of the others nothing changes */
  readonly elements: number;
  readonly before: Readonly<Record<Verdict, number>>;
  readonly after: Readonly<Record<Verdict, number>>;
  /** elements whose verdict would be another one */
  readonly changing: readonly string[];
}

/** A map grid and where on the globe it is used, degrees. */
export interface MapGrid {
  readonly name: string;
  readonly southDeg: number;
  readonly westDeg: number;
  readonly northDeg: number;
  readonly eastDeg: number;
}

export interface SetUpDesk {
  /** Reads a proposed schedule as a job folder's would be read; writes nothing. Undefined: the job is not open. */
  proposeSchedule(job: string, input: ScheduleInput, swap: Swap): Promise<ScheduleProposal | undefined>;
  allowances(job: string, language: Language): Promise<AllowancesView | undefined>;
  ruleSets(job: string, language: Language): Promise<readonly RuleSetView[]>;
  previewRule(job: string, draft: RuleDraft, language: Language): Promise<RulePreview | undefined>;
  /** Judges the measured elements by other rules; writes nothing. A newer trial ends an older one (undefined then). */
  tryRules(
    job: string,
    rules: readonly RuleDraft[],
    decision: Decision,
    progress: (done: number, total: number) => void,
  ): Promise<Trial | undefined>;
  stopTrial(): Promise<void>;
  /** Rules of a ready-made set, written out: they can be changed one by one then. */
  takeSetApart(job: string, ofSet: number): Promise<readonly NewStatement[]>;
  /** The map grid of that EPSG code. Errors: those of `findCrs`. */
  grid(crs: string): Promise<Result<MapGrid, readonly Issue[]>>;
}
