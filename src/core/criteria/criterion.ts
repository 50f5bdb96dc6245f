import type { Instrument } from "../calibration/calibration.ts";
import type { DesignAxes } from "../elements/design-axis.ts";
import type { AccessTube, DesignElement } from "../elements/element.ts";
import type { HolePath } from "../path/hole-path.ts";

export type Language = "en" | "de";
export type Verdict = "within" | "too-close-to-call" | "outside" | "not-judged";
export const VERDICTS: readonly Verdict[] = ["within", "too-close-to-call", "outside", "not-judged"];

/** read: somebody had the clause before them. quoted: seen in a text that quotes it. memory: must be confirmed before use. */
export type SourceStatus = "read" | "quoted" | "memory";

/** Where a limit comes from. Without a document the limit is somebody's own. */
export interface CriterionSource {
  readonly document: string;
  readonly edition?: string;
  readonly clause?: string;
  readonly status?: SourceStatus;
}

/** A parameter of a criterion: forms, checks and documentation are drawn from this. SI unit inside, degrees in job.json. */
export interface Parameter {
  /** key in job.json, with its unit, e.g. "limit_m" */
  readonly key: string;
  /** unit of the value in job.json: "m", "m/m", "deg", "1" */
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly required: boolean;
  readonly text: Readonly<Record<Language, string>>;
}

/** A word parameter: one of a few. The first one is the default. */
export interface Choice {
  readonly key: string;
  readonly values: readonly string[];
  readonly text: Readonly<Record<Language, string>>;
}

/** A parameter that is a table: rows of numbers, e.g. steps by diameter. */
export interface TableParameter {
  readonly key: string;
  readonly columns: readonly Parameter[];
  readonly text: Readonly<Record<Language, string>>;
}

/** One rule of the job: which kind of criterion, for which elements, with which numbers. */
export interface CriterionRequest {
  readonly id: string;
  readonly kind: string;
  /** every key given must be equal to the element's; an empty record applies to all */
  readonly appliesTo: Readonly<Record<string, string | readonly string[]>>;
  /** values of the parameters, in the units of the parameter list; angles in degrees */
  readonly numbers: Readonly<Record<string, number>>;
  readonly words: Readonly<Record<string, string>>;
  /** parameters that are tables, e.g. steps by diameter; checked by the criterion */
  readonly tables: Readonly<Record<string, readonly Readonly<Record<string, number>>[]>>;
  readonly source: CriterionSource | undefined;
  /** place in job.json, e.g. "criteria[0]" */
  readonly field: string;
}

/** What is judged: the as-built axis against the design, over what was really read. */
export interface JudgedAxis {
  readonly element: DesignElement;
  /** as-built axis of the element (or of the tube, for criteria about tubes) */
  readonly path: HolePath;
  /** depth range along the axis that was read, metres; outside of it nothing is known */
  readonly readFromM: number;
  readonly readToM: number;
  /** false when the readings stop too far above the toe to speak for the whole length */
  readonly reachesToe: boolean;
  /** false when the first station is too far below the head */
  readonly reachesHead: boolean;
  /** stretches between stations too long to count as read through, metres along the axis */
  readonly gaps?: readonly { readonly fromM: number; readonly toM: number }[];
  /** tubes of the element with their own surveyed axes, and the probe that must pass them */
  readonly tubes: readonly { readonly tube: AccessTube; readonly path: HolePath }[];
  readonly instrument: Instrument | undefined;
}

/** A value held against a limit. `value` and `limit` in the criterion's unit; within when value <= limit. */
export interface Measured {
  readonly value: number;
  readonly limit: number;
  /** level at which the value holds, as down = -level, metres; NaN = no single level */
  readonly atDownM: number;
  /** depth along the axis at which the value holds, metres; NaN = none */
  readonly atDepthM: number;
  /** value is a lower bound of the true one because part of the length was not read: it can prove outside, not within */
  readonly partial: boolean;
  /** the value as an offset at one place; left out where it is taken from several places or is no offset */
  readonly form?: OffsetForm;
  /** where several offsets must keep their limits together: all of them, in the order of depth */
  readonly forms?: readonly OffsetForm[];
  /** what the value was found on, where that is not plain: a code for `text/` and its values */
  readonly foundOn?: {
    readonly code: string;
    readonly values: Readonly<Record<string, string | number>>;
  };
}

/** A value that is the length of a vector square to the design axis: what an exact probability needs beside the number. */
export interface OffsetForm {
  /** depth of the point that the vector starts from; undefined = from the design axis */
  readonly fromDepthM: number | undefined;
  readonly atDepthM: number;
  /** directions square to the axis, and the axis */
  readonly axes: DesignAxes;
  /** parts of the vector, metres */
  readonly alongM: number;
  readonly acrossM: number;
  /** which length is held against the limit */
  readonly component: "both" | "along" | "across";
  /** limit as a length, metres */
  readonly limitM: number;
}

/** Why nothing could be measured: a code for `text/` and its values. */
export interface NotMeasured {
  readonly reason: string;
  readonly values?: Readonly<Record<string, string | number>>;
}

/** A kind of criterion. The criterion declares, everything else asks the declaration. */
export interface Criterion {
  readonly id: string;
  /** raised whenever the same input could give another number; stored with every verdict */
  readonly revision: number;
  readonly unit: "m" | "m/m" | "deg" | "1/m";
  readonly parameters: readonly Parameter[];
  readonly choices: readonly Choice[];
  readonly tables: readonly TableParameter[];
  readonly source: string;
  readonly text: Readonly<Record<Language, { readonly title: string; readonly explanation: string }>>;
  /** what cannot be used in a request, as messages in English with the field; empty = usable */
  check(
    request: CriterionRequest,
  ): readonly { readonly field: string; readonly expected: string; readonly found: string }[];
  /** Values are unrounded; NaN anywhere must end as NotMeasured, never as a smaller value. */
  measure(axis: JudgedAxis, request: CriterionRequest): Measured | NotMeasured;
  /**
   * allowed offset from the design axis at a level, metres, for drawings; NaN where there is none. With a component: of that part
   * of the offset, where the rule has a limit for each; without: the larger one.
   */
  allowanceM?(
    element: DesignElement,
    downM: number,
    request: CriterionRequest,
    component?: "along" | "across",
  ): number;
  /** the rule in one sentence, for tables and reports */
  describe(request: CriterionRequest, language: Language): string;
}
