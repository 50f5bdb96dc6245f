import type { Calibration, Instrument } from "../calibration/calibration.ts";
import type { CriterionRequest } from "../criteria/criterion.ts";
import type { Decision } from "../criteria/decision.ts";
import type { AccessTube, DesignElement } from "../elements/element.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import type { TypeAUse } from "../uncertainty/type-a/evidence.ts";

/** Where the site is. */
export interface SitePlace {
  /** "EPSG:n" or "local" */
  readonly crs: string;
  readonly latitudeRad: number | undefined;
  readonly longitudeRad: number | undefined;
  /** grid bearing = true bearing - convergence, radians; undefined = not known */
  readonly convergenceRad: number | undefined;
  readonly levelDatum: string | undefined;
}

/** One site's work, read and checked, in core units. */
export interface Job {
  readonly name: string;
  readonly place: SitePlace;
  readonly elements: readonly DesignElement[];
  readonly tubes: readonly AccessTube[];
  readonly criteria: readonly CriterionRequest[];
  readonly decision: Decision;
  readonly instruments: readonly Instrument[];
  readonly calibrations: readonly Calibration[];
  readonly runs: readonly SurveyRun[];
  /** what is done with standard values that the job's own runs show; report when left out */
  readonly typeA?: TypeAUse;
}
