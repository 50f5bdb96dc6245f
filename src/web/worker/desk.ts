// What screens can ask of the worker. Everything that goes across is plain data and small for one screen; the log, the folded
// state and the results stay in the worker.

import type { ProxyMarked } from "comlink";
import type {
  AccessTube,
  Calibration,
  CriterionRequest,
  Decision,
  DesignElement,
  ElementResult,
  Instrument,
  Issue,
  Language,
  PathMethodId,
  Result,
  RunResult,
  Section,
  SitePlace,
  SurveyRun,
  Verdict,
} from "#core";
import type { FieldState, JsonObject, JsonValue, ThingState } from "#records";
import type { SyncStatus } from "#sync";
import type { DeskLogger } from "./desk-logger.ts";
import type { DeskRecord } from "./desk-record.ts";
import type { DeskReview } from "./desk-review.ts";
import type { SetUpDesk } from "./desk-set-up.ts";

/** One line of the list of jobs. */
export interface JobCard {
  readonly id: string;
  readonly name: string;
  readonly elements: number;
  readonly runs: number;
  readonly entries: number;
  /** false: known at the office only; opening it fetches it */
  readonly isHere: boolean;
  /** what the device of the latest entry showed; a label */
  readonly lastWall: string | undefined;
}

/** How far the computation of a job is. */
export interface Work {
  /** fetching: it is not on this device yet */
  readonly phase: "fetching" | "reading" | "working" | "ready" | "stopped";
  /** elements worked out, of those that have to be */
  readonly done: number;
  readonly total: number;
}

/** The rule that decides an element's verdict: the one nearest to, or furthest over, its limit. */
export interface DecidingRule {
  readonly criterionId: string;
  readonly kind: string;
  readonly verdict: Verdict;
  /** NaN where nothing was measured */
  readonly value: number;
  readonly limit: number;
  /** unit of value, limit and uncertainty, as `formatAgainstLimit` takes it */
  readonly unit: string;
  readonly standardUncertainty: number | undefined;
  readonly probabilityWithin: number | undefined;
  readonly levelM: number;
}

export interface FindingCounts {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
}

/** One element as lists and the plan show it. Metres and radians; levels positive up. */
export interface ElementRow {
  readonly id: string;
  readonly kind: string;
  readonly group: string | undefined;
  readonly sequence: number | undefined;
  readonly role: string | undefined;
  readonly section: Section | undefined;
  readonly eastM: number;
  readonly northM: number;
  readonly headLevelM: number;
  readonly cutoffLevelM: number | undefined;
  readonly toeLevelM: number | undefined;
  readonly rakeRad: number;
  readonly rakeBearingRad: number | undefined;
  readonly runs: number;
  /** undefined: not worked out yet */
  readonly verdict: Verdict | undefined;
  readonly deciding: DecidingRule | undefined;
  /** offset of the lowest point that was read, metres; NaN if nothing was read */
  readonly lowestOffsetM: number;
  readonly findings: FindingCounts;
  readonly inConflict: boolean;
}

/** What waits for somebody, the most urgent first; `count` is how many of it there are. */
export type Waiting =
  | { readonly what: "no-elements" | "nothing" }
  | {
      readonly what:
        | "conflicts"
        | "missing-entries"
        | "errors"
        | "outside"
        | "too-close"
        | "no-runs"
        | "not-judged";
      readonly count: number;
      /** the first of them */
      readonly element: string | undefined;
    };

/** A job as its screens see it. */
export interface JobView {
  readonly id: string;
  /** rises with every change of the job or of its results */
  readonly revision: number;
  readonly name: string;
  readonly place: SitePlace | undefined;
  readonly work: Work;
  readonly elements: readonly ElementRow[];
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly runs: number;
  readonly entries: number;
  readonly findings: FindingCounts;
  readonly conflicts: number;
  /** entries of some device are missing, or cannot be read here: what is shown may not be all */
  readonly isComplete: boolean;
  readonly waiting: Waiting;
}

/** As-built axes of a job for the plan, all in arrays; element i has the points from start[i] up to start[i + 1]. */
export interface AxesView {
  readonly revision: number;
  readonly ids: readonly string[];
  readonly start: Int32Array;
  /** of the points below, metres */
  readonly origin: { readonly eastM: number; readonly northM: number };
  /** metres from the origin */
  readonly eastM: Float32Array;
  readonly northM: Float32Array;
  /** positive up, falling along each axis */
  readonly levelM: Float32Array;
}

export interface RunRow {
  readonly id: string;
  readonly elementId: string;
  readonly tubeId: string | undefined;
  readonly instrumentId: string;
  readonly operator: string | undefined;
  readonly startedAt: string | undefined;
  readonly readings: number;
  readonly setAside: number;
  /** undefined: cannot be worked out; the findings say why */
  readonly isUsable: boolean;
  readonly findings: readonly Issue[];
}

/** All about one element. */
export interface ElementDetail {
  readonly row: ElementRow;
  readonly design: DesignElement;
  readonly tubes: readonly AccessTube[];
  /** undefined: not worked out yet */
  readonly result: ElementResult | undefined;
  readonly runs: readonly RunRow[];
  readonly findings: readonly Issue[];
}

/** Where a reading stands in the log: entry and row in it. `setAside` takes it. */
export interface ReadingPlace {
  readonly entry: string;
  readonly row: number;
}

/** Readings of a run as they were written down, with what was set aside. */
export interface ReadingsTable {
  /** names with units, as in the log: "depth_m", "tilt_x_deg" */
  readonly columns: readonly string[];
  readonly rows: readonly {
    readonly place: ReadingPlace;
    readonly cells: readonly (string | number | null)[];
    readonly aside: { readonly reason: string; readonly author: string; readonly wall: string } | undefined;
  }[];
}

/** All about one run. */
export interface RunDetail {
  readonly row: RunRow;
  /** undefined where it cannot be worked out */
  readonly run: SurveyRun | undefined;
  readonly result: RunResult | undefined;
  readonly table: ReadingsTable;
}

/** What holds for the whole job, in core units. */
export interface JobSettings {
  readonly name: string;
  readonly place: SitePlace;
  readonly criteria: readonly CriterionRequest[];
  readonly decision: Decision;
  readonly instruments: readonly Instrument[];
  readonly calibrations: readonly Calibration[];
}

export interface ConflictView {
  readonly thing: string;
  readonly field: string;
  readonly values: FieldState;
}

/** One entry of the log, for the history. */
export interface HistoryRow {
  readonly id: string;
  readonly arrival: number;
  readonly device: string;
  readonly sequence: number;
  readonly author: string;
  readonly wall: string;
  readonly kind: string;
  readonly body: JsonObject;
}

/** What somebody writes down; the author is who is signed in. Kinds and bodies: `entryKinds` of #records. */
export interface NewStatement {
  readonly kind: string;
  readonly body: JsonObject;
}

export interface InputFile {
  /** with folders, "/" between them */
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Outcome of bringing a folder in. */
export interface Imported {
  readonly job: string;
  readonly name: string;
  /** entries written; 0 if everything was there */
  readonly added: number;
  readonly findings: readonly Issue[];
}

/** Whether this window may write: one window of a browser does, the others look on. */
export interface DeviceStatus {
  readonly writer: "here" | "elsewhere";
  /** public key of this device: its name in the log */
  readonly device: string | undefined;
  /** the browser has promised not to clear the store by itself */
  readonly isPersisted: boolean;
  /** bytes that the browser still gives; undefined where it does not say */
  readonly freeBytes: number | undefined;
  /** why nothing can be kept here; undefined if all is well */
  readonly trouble: Issue | undefined;
}

/** Who writes, as the server says or as it last said. */
export interface Author {
  readonly id: string;
  readonly name: string;
}

/** What the worker does for the screens. Functions given in are called in the window (`proxy` of comlink). */
export interface Desk extends SetUpDesk {
  /** inbox, readings, path, repeats, verdict and signature */
  readonly review: DeskReview & ProxyMarked;
  /** history and proof, conflicts, overview, devices, check of a file */
  readonly record: DeskRecord & ProxyMarked;
  /** files of loggers, and their mapping */
  readonly logger: DeskLogger & ProxyMarked;

  /** Says who writes. To be called before anything is written. */
  begin(author: Author): Promise<void>;
  deviceStatus(): Promise<DeviceStatus>;
  watchDevice(tell: (status: DeviceStatus) => void): Promise<void>;

  jobs(): Promise<Result<readonly JobCard[], Issue>>;
  /** Tells when a job comes or grows. @returns a number for `unwatchJobs`. */
  watchJobs(tell: () => void): Promise<number>;
  unwatchJobs(watch: number): Promise<void>;
  /** @param place fields of the job that say where it is: crs, latitude_deg, longitude_deg, level_datum. */
  createJob(name: string, place?: JsonObject): Promise<Result<string, readonly Issue[]>>;

  /** Opens a job and works it out; told at once and with every change. @returns a number for `unwatchJob`. */
  watchJob(job: string, tell: (view: Result<JobView, Issue>) => void): Promise<number>;
  unwatchJob(watch: number): Promise<void>;
  /** Stops the computation; what is worked out stays. */
  stopWork(job: string): Promise<void>;
  goOnWorking(job: string): Promise<void>;

  axes(job: string): Promise<AxesView | undefined>;
  element(job: string, element: string): Promise<ElementDetail | undefined>;
  run(job: string, run: string): Promise<RunDetail | undefined>;
  runs(job: string): Promise<readonly RunRow[]>;
  settings(job: string): Promise<JobSettings | undefined>;
  findings(job: string): Promise<readonly Issue[]>;
  conflicts(job: string): Promise<readonly ConflictView[]>;
  /** Things of the folded state whose key begins so: "instrument/", "person/", "element/P12". */
  things(job: string, prefix: string): Promise<Readonly<Record<string, ThingState>>>;
  /** Newest first; of one thing ("run/P12-1") or of all. */
  history(
    job: string,
    thing: string | undefined,
    from: number,
    count: number,
  ): Promise<readonly HistoryRow[]>;
  /** The element worked out in another way, for comparison; nothing is kept. */
  tryElement(job: string, element: string, method: PathMethodId): Promise<ElementResult | undefined>;
  /** A drawing as SVG text; undefined while the element is not worked out. Ids: `figures` of #figures. */
  figure(job: string, element: string, figure: string, language: Language): Promise<string | undefined>;
  calibrationFigure(
    job: string,
    calibration: string,
    figure: string,
    language: Language,
  ): Promise<string | undefined>;

  /** Writes entries signed by this device. They are on the disk when this answers. @returns their ids. */
  write(
    job: string,
    statements: readonly NewStatement[],
  ): Promise<Result<readonly string[], readonly Issue[]>>;
  setAside(
    job: string,
    run: string,
    places: readonly ReadingPlace[],
    reason: string,
  ): Promise<Result<readonly string[], readonly Issue[]>>;
  putBack(
    job: string,
    run: string,
    places: readonly ReadingPlace[],
    reason: string,
  ): Promise<Result<readonly string[], readonly Issue[]>>;
  /** Settles a conflict: writes the field anew, having seen all values. */
  settle(
    job: string,
    thing: string,
    field: string,
    value: JsonValue,
  ): Promise<Result<readonly string[], readonly Issue[]>>;

  /** Brings in a job folder, as a zip or as its files; into a job that is there, only differences are written. */
  importFolder(
    files: readonly InputFile[],
    into: string | undefined,
    progress: (done: number, total: number) => void,
  ): Promise<Result<Imported, readonly Issue[]>>;
  /** The job as a folder, zipped. */
  exportFolder(job: string): Promise<Result<Uint8Array<ArrayBuffer>, readonly Issue[]>>;

  /** Where the entries of a job are; told at once and with every change. @returns a number for `unwatchSync`. */
  watchSync(job: string, tell: (status: SyncStatus) => void): Promise<number>;
  unwatchSync(watch: number): Promise<void>;
  /** Sends and fetches at once, whatever the pause. */
  syncNow(job: string): Promise<SyncStatus>;
}
