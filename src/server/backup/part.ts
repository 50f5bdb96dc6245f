import { z } from "zod";
import { isHex32, type JsonValue } from "#records";

export const BACK_UP_FORMAT = "toeline-backup/1";

export type Row = Readonly<Record<string, unknown>>;

/** Rows of one table, as they go from one place to another. */
export interface Part {
  readonly table: string;
  readonly rows: readonly Row[];
}

const count = z.number().int().min(0);
const hash = z.string().refine(isHex32, "64 lower-case hexadecimal digits");

/** What a copy begins with: whose it is, and in which state its tables are. */
export const headSchema = z.strictObject({
  format: z.literal(BACK_UP_FORMAT),
  made_at: z.string(),
  /** number of the last step of each set of tables */
  steps: z.strictObject({ store: count, office: count }),
  /** name of the office, and the private key with which it signs */
  office: z.strictObject({ id: z.string(), seed: hash }).nullable(),
  /** in which of its lives the office was; a restore begins a later one */
  era: count,
});
export type Head = z.output<typeof headSchema>;

/** What a copy ends with: the entries of every job as a set, and how many rows there were of each table. */
export const tallySchema = z.strictObject({
  jobs: z.record(z.string(), z.strictObject({ size: count, digest: hash })),
  rows: z.record(z.string(), count),
});
export type Tally = z.output<typeof tallySchema>;

/** A row as JSON can say it: bytes become a text. */
export const rowText = (row: Row): string =>
  JSON.stringify(Object.fromEntries(Object.entries(row).map(([name, value]) => [name, saidOf(value)])));

const saidOf = (value: unknown): JsonValue =>
  value instanceof Uint8Array
    ? { base64: Buffer.from(value).toString("base64") }
    : (value as Exclude<JsonValue, object>);

export const rowOf = (text: string): Row =>
  Object.fromEntries(
    Object.entries(JSON.parse(text) as Row).map(([name, value]) => {
      const { base64 } = (value ?? {}) as { base64?: unknown };
      return [name, typeof base64 === "string" ? Buffer.from(base64, "base64") : value];
    }),
  );
