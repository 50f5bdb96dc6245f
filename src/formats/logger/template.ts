import { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import { Finder } from "../finding/finder.ts";
import { parseJson } from "../json/parse-json.ts";
import { crc32 } from "../zip/crc32.ts";
import type { LoggerFile } from "./open-logger.ts";
import { plainHeading, ROLES } from "./roles.ts";
import {
  CONVENTION_CHOICES,
  DATE_ORDERS,
  ENCODINGS,
  type GivenSettings,
  type LoggerConventions,
  SEPARATORS,
  THOUSANDS,
} from "./settings.ts";
import { UNIT_IDS } from "./units.ts";

export const TEMPLATE_FORMAT = "toeline-mapping/1";

const oneOf = <const T extends readonly (string | number)[]>(values: T) =>
  z.custom<T[number]>((value) => values.includes(value as T[number]), `one of ${values.join(", ")}`);

const choices = Object.fromEntries(
  Object.entries(CONVENTION_CHOICES).map(([name, values]) => [name, oneOf(values)]),
);

/** How a logger's files are read: everything but what differs from file to file, such as the line of the headings. */
export const templateSchema = z.object({
  format: z.literal(TEMPLATE_FORMAT),
  name: z.string().min(1).max(200),
  /** headings, units and separator of the files it is for */
  fingerprint: z.string().max(20_000),
  layout: z.object({
    encoding: z.enum(ENCODINGS),
    separator: z.enum(SEPARATORS),
    decimal: z.enum([".", ","]),
    thousands: z.enum(THOUSANDS),
    dateOrder: z.enum(DATE_ORDERS),
  }),
  columns: z
    .array(z.object({ heading: z.string().max(500), role: z.enum(ROLES), unit: z.enum(UNIT_IDS) }))
    .max(1000),
  conventions: z.object({
    ...choices,
    depthZeroM: z.number().min(-15_000).max(15_000),
    zone: z.string().regex(/^$|^Z$|^[+-]\d\d:\d\d$/),
    missing: z.array(z.string().max(40)).max(100),
  }),
});
export type LoggerTemplate = Omit<z.infer<typeof templateSchema>, "conventions"> & {
  readonly conventions: LoggerConventions;
};

/**
 * What files of one logger have in common: separator, headings and units, in small letters and without accents.
 *
 * A file without headings has only its number of columns; two such loggers can be taken for each other.
 */
export function fingerprintOf(file: LoggerFile): string {
  const { layout, columns } = file.settings;
  const heads = columns.map(
    ({ heading }, index) => `${plainHeading(heading)} [${file.writtenUnits[index] ?? ""}]`,
  );
  return [layout.separator, columns.length, ...heads].join("\n");
}

/** Short name of a fingerprint, for people: eight hexadecimal digits. */
export const shortFingerprint = (fingerprint: string): string =>
  crc32(new TextEncoder().encode(fingerprint)).toString(16).padStart(8, "0");

/** The settings of a file as a template for the next of the same logger. */
export function templateOf(file: LoggerFile, name: string): LoggerTemplate {
  const { encoding, separator, decimal, thousands, dateOrder } = file.settings.layout;
  return {
    format: TEMPLATE_FORMAT,
    name,
    fingerprint: fingerprintOf(file),
    layout: { encoding, separator, decimal, thousands, dateOrder },
    columns: file.settings.columns.map((column) => ({ ...column })),
    conventions: file.settings.conventions,
  };
}

/** Settings that a template gives; lines are found anew in each file. */
export const settingsOf = (template: LoggerTemplate): GivenSettings => ({
  layout: template.layout,
  columns: Object.fromEntries(template.columns.map(({ role, unit }, index) => [index, { role, unit }])),
  conventions: template.conventions,
  template: template.name,
});

/** The template that is for files like this one; of several the last. */
export function templateFor(
  file: LoggerFile,
  templates: readonly LoggerTemplate[],
): LoggerTemplate | undefined {
  const wanted = fingerprintOf(file);
  return templates.findLast(({ fingerprint }) => fingerprint === wanted);
}

/** Template as a file. */
export const writeTemplate = (template: LoggerTemplate): string =>
  `${JSON.stringify(template, undefined, 2)}\n`;

/**
 * Reads a template.
 *
 * Errors: formats.json-syntax, logger.template-form.
 */
export function readTemplate(text: string, file: string): Result<LoggerTemplate, readonly Issue[]> {
  const found = new Finder(file);
  const parsed = parseJson(text);
  if (!parsed.ok) {
    const { line, ...values } = parsed.error;
    found.block("formats.json-syntax", { line }, values);
    return fail(found.issues);
  }
  return checkTemplate(parsed.value.value, file);
}

/** The same for a template that is held as a value. Errors: logger.template-form. */
export function checkTemplate(value: unknown, file: string): Result<LoggerTemplate, readonly Issue[]> {
  const found = new Finder(file);
  const read = templateSchema.safeParse(value);
  if (read.success) return ok(read.data as unknown as LoggerTemplate);
  for (const { path, message } of read.error.issues)
    found.block(
      "logger.template-form",
      { field: path.join(".") },
      { found: excerpt(message), expected: TEMPLATE_FORMAT },
    );
  return fail(found.issues);
}
