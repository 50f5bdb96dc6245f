// What the screens of the review ask of the worker: what has arrived, readings to be judged, the steps of the computation, repeats,
// the verdict and its signature.

import type {
  AxisRow,
  ClosureModel,
  CriterionSource,
  Decision,
  Issue,
  Language,
  Measures,
  PathMethodId,
  Result,
  StepReport,
  Verdict,
  VerdictResult,
} from "#core";
import type { ElementRow, FindingCounts, ReadingsTable, RunRow } from "./desk.ts";

/** Who and when: the wall time is what the device showed, a label. */
export interface SaidBy {
  readonly author: string;
  readonly wall: string;
}

/** Whether somebody has looked at something, and whether it has changed since. */
export type Acceptance =
  | { readonly state: "waiting" }
  | { readonly state: "accepted" | "changed"; readonly by: SaidBy; readonly reason: string };

/** One run as the inbox shows it. */
export interface InboxRow {
  readonly run: string;
  readonly element: string;
  readonly tube: string | undefined;
  readonly operator: string | undefined;
  readonly startedAt: string | undefined;
  /** wall time of its latest entry */
  readonly arrivedAt: string | undefined;
  readonly readings: number;
  readonly setAside: number;
  /** rows that the end of the run names and that are not here */
  readonly missing: number;
  /** no end of the run is here */
  readonly isOpen: boolean;
  readonly isUsable: boolean;
  readonly findings: FindingCounts;
  readonly verdict: Verdict | undefined;
  readonly acceptance: Acceptance["state"];
}

/** Entries of a device that others have heard of and that are not here. */
export interface MissingEntries {
  readonly device: string;
  readonly from: number;
  readonly to: number;
}

/** What has arrived: runs that wait first, the most urgent of them first; what is odd about the log itself. */
export interface InboxView {
  readonly rows: readonly InboxRow[];
  /** the run that has waited longest */
  readonly oldest: string | undefined;
  readonly missing: readonly MissingEntries[];
  /** entries that are here but cannot be read by this version */
  readonly unread: number;
  /** places where a device has written two things under one number */
  readonly forks: number;
}

/** Set aside or put back, once. */
export interface RowChange extends SaidBy {
  readonly isAside: boolean;
  readonly reason: string;
}

/** Readings of one pass against depth, as they were recorded. */
export interface ReadingSeries {
  readonly direction: "down" | "up";
  /** 1 or 2; 0: the file does not say */
  readonly face: number;
  readonly repeat: number;
  readonly depthM: readonly number[];
  readonly x: readonly (number | null)[];
  readonly y: readonly (number | null)[];
  /** row of the table that each point stands for */
  readonly row: readonly number[];
}

/** A check of a run: what was found, what is allowed, and whether somebody should look. */
export interface RunCheck {
  readonly what: "closure" | "two-face" | "passes" | "depth-return" | "tilt-zero" | "gaps" | "complete";
  readonly outcome: "good" | "look" | "not-done";
  /** in `unit`; NaN where there is none */
  readonly found: number;
  readonly allowed: number | undefined;
  readonly unit: "deg" | "m" | "1";
  /** depth of the worst place, metres */
  readonly atM: number | undefined;
}

/** Everything that is needed to judge the readings of one run. */
export interface RunReview {
  readonly row: RunRow;
  readonly measures: Measures | undefined;
  readonly table: ReadingsTable;
  /** by row of the table: when it was set aside and put back, the first time first; rows that never were have none */
  readonly changes: Readonly<Record<number, readonly RowChange[]>>;
  readonly columns: { readonly x: string; readonly y: string } | undefined;
  readonly series: readonly ReadingSeries[];
  readonly checks: readonly RunCheck[];
  readonly acceptance: Acceptance;
  readonly element: ElementRow;
  /** runs in the order of the elements */
  readonly before: string | undefined;
  readonly after: string | undefined;
  /** the next one that waits, after this one */
  readonly nextWaiting: string | undefined;
}

/** What may be switched in a trial of the computation. Left out: as the job says. */
export interface TrialChoices {
  readonly method?: PathMethodId;
  readonly closure?: ClosureModel;
  /** kinds of calibration, "spiral" and "stretch" that are left out */
  readonly without?: readonly string[];
}

/** A step of the computation that may be switched off, and how far the lowest point moves without it. */
export interface SwitchEffect {
  readonly id: string;
  /** metres; NaN where nothing can be worked out without it */
  readonly movesM: number;
}

/** Steps of one run, in order. */
export interface RunSteps {
  readonly run: string;
  readonly tube: string | undefined;
  readonly steps: readonly StepReport[];
  readonly judgeable: boolean;
}

export interface PathView {
  readonly runs: readonly RunSteps[];
  readonly switches: readonly SwitchEffect[];
  /** how the element's own runs are closed; undefined where no gyro carries a heading */
  readonly closure: ClosureModel | undefined;
  readonly acceptance: Acceptance;
  /** runs whose readings nobody has accepted yet, or that have changed since */
  readonly waitingRuns: readonly string[];
}

/** A trial beside what the job says. Metres. */
export interface Trial {
  readonly verdict: Verdict;
  readonly verdicts: readonly VerdictResult[];
  readonly verdictNow: Verdict;
  readonly lowest: { readonly nowM: number; readonly trialM: number };
  /** largest distance between the two axes at equal depth, and where; NaN where there is no axis */
  readonly largestM: number;
  readonly largestLevelM: number;
  readonly rows: readonly TrialRow[];
}

export interface TrialRow {
  readonly levelM: number;
  readonly now: Pick<AxisRow, "alongM" | "acrossM">;
  readonly trial: { readonly alongM: number; readonly acrossM: number };
}

/** One run's own course against the design. */
export interface RunCourse {
  readonly run: string;
  readonly isLeftOut: boolean;
  readonly judgeable: boolean;
  readonly operator: string | undefined;
  readonly startedAt: string | undefined;
  readonly levelM: readonly number[];
  readonly alongM: readonly number[];
  readonly acrossM: readonly number[];
  /** verdict if this run alone counted */
  readonly alone: Verdict | undefined;
}

/** Two runs of one hole: the second less the first. Metres. */
export interface RunDifference {
  readonly first: string;
  readonly second: string;
  readonly levelM: readonly number[];
  readonly alongM: readonly number[];
  readonly acrossM: readonly number[];
  readonly stations: number;
  readonly meanAlongM: number;
  readonly meanAcrossM: number;
  /** standard deviation of a difference about its mean, along and across together */
  readonly scatterM: number;
  readonly largestM: number;
  readonly largestLevelM: number;
  /** radius within which the difference at that place is to be expected with 95 %; NaN where it is not known */
  readonly expectedM: number;
  readonly agree: boolean;
}

/** The runs of one hole of an element. */
export interface HoleRuns {
  readonly tube: string | undefined;
  readonly courses: readonly RunCourse[];
  readonly differences: readonly RunDifference[];
}

/** A rule held against the element, with all that a reader asks for. */
export interface RuleView {
  readonly judgement: VerdictResult;
  readonly title: string;
  /** the rule in one sentence */
  readonly sentence: string;
  readonly source: CriterionSource | undefined;
  /** limit less value, in the unit of the criterion */
  readonly margin: number;
  /** standard uncertainty at which the value found would be called; undefined where it is called already */
  readonly settlesAt: number | undefined;
}

/** A verdict that somebody has recorded. */
export interface RecordedVerdict extends SaidBy {
  readonly verdict: Verdict;
  readonly reason: string;
  /** false: the readings, the element or the rules have changed since, or the program finds another verdict now */
  readonly isCurrent: boolean;
}

/** A signature and what checking it has found. */
export interface SealView {
  readonly meaning: string;
  readonly name: string;
  readonly at: string;
  readonly key: string;
  /** undefined: sound */
  readonly trouble: Issue | undefined;
  /** it covers the recorded verdict that counts now */
  readonly isCurrent: boolean;
}

export interface VerdictView {
  readonly row: ElementRow;
  readonly decision: Decision;
  readonly rules: readonly RuleView[];
  /** what would halve the uncertainty, a sentence a place; nothing where it is settled */
  readonly halving: readonly string[];
  readonly recorded: RecordedVerdict | undefined;
  readonly seals: readonly SealView[];
  readonly runs: readonly { readonly run: string; readonly acceptance: Acceptance["state"] }[];
  /** who took the readings: signing one's own work is said */
  readonly takenBy: readonly string[];
}

/** What checking the whole log has found. */
export interface LogCheck {
  readonly entries: number;
  readonly devices: number;
  readonly firstBad: readonly { readonly device: string; readonly sequence: number; readonly issue: Issue }[];
}

type Written = Result<readonly string[], readonly Issue[]>;

/** What the worker does for the review. */
export interface DeskReview {
  inbox(job: string): Promise<InboxView | undefined>;
  run(job: string, run: string): Promise<RunReview | undefined>;
  path(job: string, element: string): Promise<PathView | undefined>;
  /** Works the element out in another way; nothing is kept. */
  trial(job: string, element: string, choices: TrialChoices): Promise<Trial | undefined>;
  together(job: string, element: string): Promise<readonly HoleRuns[] | undefined>;
  /** Takes every reading of a run out of the computation, or all of them in again. */
  leaveOut(job: string, run: string, isOut: boolean, reason: string): Promise<Written>;
  verdict(job: string, element: string, language: Language): Promise<VerdictView | undefined>;
  acceptReadings(job: string, run: string, reason: string): Promise<Written>;
  acceptPath(job: string, element: string, reason: string): Promise<Written>;
  /** Writes down the verdict that the program finds now, with what it rests on. */
  recordVerdict(job: string, element: string, reason: string): Promise<Written>;
  /**
   * Signs for the element as it is recorded, with the key of whoever is signed in; a key is made and announced when it is first used.
   *
   * Errors: desk.nothing-recorded, desk.conflict-open, those of makeSeal and of writing.
   */
  sign(job: string, element: string, meaning: string): Promise<Written>;
  /** Checks every entry, every chain and every link of the log. */
  checkLog(job: string): Promise<LogCheck | undefined>;
}
