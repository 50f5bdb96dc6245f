import type { Issue } from "#core";
import type { DecimalSign } from "../table/numbers.ts";
import type { Role } from "./roles.ts";
import type { UnitId } from "./units.ts";

export const ENCODINGS = ["utf-8", "utf-16le", "utf-16be", "windows-1252", "workbook"] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** What stands between cells. blanks: one or more; wide-blanks: two or more; sentences: lines such as `$GPHDT,274.07,T*03` */
export const SEPARATORS = [
  ",",
  ";",
  "\t",
  "|",
  "blanks",
  "wide-blanks",
  "sentences",
  "one-column",
  "workbook",
] as const;
export type CellSeparator = (typeof SEPARATORS)[number];

export const THOUSANDS = ["none", ",", ".", "blank", "'"] as const;
export type Thousands = (typeof THOUSANDS)[number];

export const DATE_ORDERS = ["ymd", "dmy", "mdy"] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

/** How the file is taken apart. Lines count from 1; 0 = there is none. */
export interface LoggerLayout {
  readonly encoding: Encoding;
  readonly separator: CellSeparator;
  readonly headingLine: number;
  readonly unitsLine: number;
  readonly firstLine: number;
  readonly lastLine: number;
  readonly decimal: DecimalSign;
  readonly thousands: Thousands;
  readonly dateOrder: DateOrder;
}

/** What a column of the file holds. */
export interface LoggerColumn {
  /** as the file writes it, without its unit; "column 3" where there is none */
  readonly heading: string;
  readonly role: Role;
  readonly unit: UnitId;
}

/** What no file says: which way is positive, and where an angle begins. The first of each is the program's own way. */
export const CONVENTION_CHOICES = {
  depthSense: ["down", "up"],
  xTowardsDeg: [0, 90, 180, 270],
  ySense: ["clockwise", "anticlockwise"],
  tiltSense: ["down-hole-end", "upper-end"],
  slope: ["sine", "tangent"],
  accelerationSense: ["reaction", "gravity"],
  zSense: ["down", "up"],
  turnSense: ["clockwise", "anticlockwise"],
  azimuthSense: ["clockwise", "anticlockwise"],
  north: ["magnetic", "true", "grid"],
  inclinationFrom: ["plumb", "level"],
  wholeFace: [0, 1, 2],
  sampling: ["stops", "continuous"],
  incomplete: ["leave-out", "keep"],
} as const;

type Choices = typeof CONVENTION_CHOICES;
export type ConventionName = keyof Choices;

/**
 * Axes and signs of the logger. `xTowardsDeg`: where the logger's x lies, clockwise from probe +x, looking down the hole;
 * `ySense`: its y is 90° clockwise or anticlockwise of its x; `tiltSense`: which end leans where the reading is positive;
 * `wholeFace`: face of all rows of a file that does not say it (0 = none); `incomplete`: what becomes of rows without a
 * needed value.
 */
export type LoggerConventions = { readonly [name in ConventionName]: Choices[name][number] } & {
  /** added to every depth, metres */
  readonly depthZeroM: number;
  /** offset of times without zone, such as +01:00; "" = not given */
  readonly zone: string;
  /** texts that stand for no reading */
  readonly missing: readonly string[];
};

export interface LoggerSettings {
  readonly layout: LoggerLayout;
  readonly columns: readonly LoggerColumn[];
  readonly conventions: LoggerConventions;
}

/** Settings that somebody gave, or that a template brings; everything else is guessed. Columns by place in the row. */
export interface GivenSettings {
  readonly layout?: Partial<LoggerLayout>;
  readonly columns?: Readonly<Record<number, Partial<Pick<LoggerColumn, "role" | "unit">>>>;
  readonly conventions?: Partial<LoggerConventions>;
  /** name of the template that they come from */
  readonly template?: string;
}

/** certain: it can be read in no other way. likely: usual, and nothing speaks against it. open: look at it. */
export type Sureness = "certain" | "likely" | "open";

/** How sure a setting is, and why. */
export interface Reason {
  readonly sure: Sureness;
  readonly why: Issue;
}

/** A setting with its reason. */
export interface Guess<T> extends Reason {
  readonly value: T;
}

export function guess<T>(value: T, sure: Sureness, code: string, values: Issue["values"] = {}): Guess<T> {
  return { value, sure, why: { code, severity: "note", place: {}, values } };
}

/** The setting as given, or as guessed. */
export const givenOr = <T>(given: T | undefined, guessed: () => Guess<T>): Guess<T> =>
  given === undefined ? guessed() : guess(given, "certain", "logger.why-given", { found: String(given) });
