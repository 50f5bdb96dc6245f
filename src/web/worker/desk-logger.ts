// What the screen that brings files in asks of the worker: what a file is, how a logger's file is read, and the run made of it.

import type { Issue, Measures, Result } from "#core";
import type { ConventionName, Flag, GivenSettings, LoggerSettings, PreambleLine, Reason } from "#formats";
import type { InputFile } from "./desk.ts";

/** What was dropped. */
export type DroppedKind = "job-folder" | "schedule" | "mapping" | "readings";

/** One row of the file as it stands there, and what became of it. */
export interface MappedRow {
  readonly line: number;
  readonly cells: readonly string[];
  readonly flags: readonly Flag[];
  readonly isTaken: boolean;
}

/** Readings along the depth, thinned out for drawing; NaN breaks the line. */
export interface PreviewLine {
  /** column of the readings file: "tilt_x_deg" */
  readonly name: string;
  readonly values: Float64Array;
}

/** How a logger's file is understood with the settings as they are. */
export interface MappingView {
  readonly file: string;
  readonly settings: LoggerSettings;
  /** by name of the setting: "layout.decimal", "column.0.role", "conventions.ySense" */
  readonly reasons: Readonly<Record<string, Reason>>;
  /** conventions that matter for the columns there are */
  readonly conventions: readonly ConventionName[];
  readonly preamble: readonly PreambleLine[];
  /** the mapping that the settings come from */
  readonly template: string | undefined;
  /** eight digits that name the layout */
  readonly fingerprint: string;
  /** the first rows */
  readonly rows: readonly MappedRow[];
  readonly count: number;
  readonly taken: number;
  readonly measures: Measures | undefined;
  /** false: times without date, or none; the run must say when it began */
  readonly isDated: boolean;
  readonly depthM: Float64Array;
  readonly lines: readonly PreviewLine[];
  readonly findings: readonly Issue[];
}

export interface GivenHeading {
  readonly headingDeg: number;
  readonly north: "magnetic" | "true" | "grid";
}

/** Where the readings belong. */
export interface RunTarget {
  readonly run: string;
  readonly element: string;
  readonly tube: string | undefined;
  readonly instrument: string;
  readonly calibrations: readonly string[];
  readonly operator: string | undefined;
  readonly startedAt: string | undefined;
  readonly opening: GivenHeading | undefined;
  readonly closing: GivenHeading | undefined;
  readonly grooveBearingDeg: number | undefined;
}

export interface DeskLogger {
  kindOf(files: readonly InputFile[]): Promise<DroppedKind>;
  /** Takes a logger's file. A mapping that fits it is used, of the job or of this device. */
  open(job: string, file: InputFile): Promise<Result<MappingView, readonly Issue[]>>;
  /** The file that was opened, with further settings given by hand. */
  change(given: GivenSettings): Promise<Result<MappingView, readonly Issue[]>>;
  /** Writes the run, its readings and the mapping. They are on the disk when this answers. */
  accept(
    job: string,
    target: RunTarget,
    mapping: { readonly name: string; readonly reason: string },
  ): Promise<Result<true, readonly Issue[]>>;
  /** The mapping as a file, to be carried to another device. */
  exportMapping(name: string): Promise<string | undefined>;
  /** Keeps a mapping from a file on this device. @returns its name. */
  importMapping(file: InputFile): Promise<Result<string, readonly Issue[]>>;
}
