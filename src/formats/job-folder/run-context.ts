import type { AccessTube, Calibration, DesignElement, Instrument, SurveyRun } from "#core";
import type { Finder } from "../finding/finder.ts";
import type { FolderReader } from "./folder.ts";
import type { JobInput } from "./read-job-json.ts";
import type { ReadingsRead } from "./read-readings.ts";
import type { SiteNorth } from "./turn-to-grid.ts";

/** All that a run may refer to. */
export interface RunContext {
  readonly folder: FolderReader;
  readonly input: JobInput;
  readonly elements: ReadonlyMap<string, DesignElement>;
  readonly badElementIds: ReadonlySet<string>;
  readonly tubes: ReadonlyMap<string, AccessTube>;
  readonly badTubeKeys: ReadonlySet<string>;
  readonly tubesUnreadable: boolean;
  readonly elementsWithTubes: ReadonlySet<string>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly calibrations: ReadonlyMap<string, Calibration>;
  readonly badCalibrationIds: ReadonlySet<string>;
  readonly north: SiteNorth;
  readonly finderFor: (file: string) => Finder;
  /** readings files read so far by name, with the run that named them first */
  readonly filesRead: Map<string, FileRead>;
}

export interface FileRead {
  readonly read: ReadingsRead | undefined;
  readonly found: Finder;
  readonly firstRun: string;
  readonly measures: string;
}

/** What became of one run of job.json. */
export interface RunRead {
  readonly runId: string;
  readonly elementId: string;
  readonly tubeId: string | undefined;
  readonly file: string;
  /** findings at the run in job.json */
  readonly found: Finder;
  readonly fileFound: Finder | undefined;
  /** undefined where it cannot be used */
  readonly run: SurveyRun | undefined;
}
