import type { DesignElement, ElementResult, Issue, Job, JobResults, Language } from "#core";
import type { UnitSystem } from "#text";
import type { Quantities } from "./quantities.ts";
import type { RawFile, ReportElement, ReportFigure, ReportIdentity, ReportModel } from "./report-model.ts";

/** A finding with what it is about, for findings that have no file. */
export interface ReportFinding {
  readonly issue: Issue;
  /** "run P12-1", "element P12", or nothing for the job */
  readonly about: string;
}

export interface ReportOptions {
  readonly language: Language;
  readonly units: UnitSystem;
  /** ids of the elements to write; all when left out */
  readonly elements?: readonly string[];
  readonly report: ReportIdentity;
  /** version of the program */
  readonly version: string;
  /** kinds of drawing for each element, by id; plan and section when left out */
  readonly figures?: readonly string[];
  /** raw files that the job was read from */
  readonly files?: readonly RawFile[];
  /** hex SHA-256 of the results, for reports that no evidence log stands behind */
  readonly fingerprint?: string;
  /** the revision before: what changed is listed */
  readonly previous?: ReportModel;
}

/** Everything a section of the report is made from. */
export interface ReportContext {
  readonly job: Job;
  readonly results: JobResults;
  readonly findings: readonly ReportFinding[];
  readonly options: ReportOptions;
  readonly language: Language;
  readonly q: Quantities;
  /** the elements written, in their order, with design and result */
  readonly subjects: readonly {
    readonly element: DesignElement;
    readonly result: ElementResult;
    readonly report: ReportElement;
  }[];
  readonly figures: readonly ReportFigure[];
}
