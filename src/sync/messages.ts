import { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import { isHex32, parseJson } from "#records";
import { error } from "./issue.ts";

// Messages between a device and an office beside those of the log itself, which are the records' own (docs/formats/sync.md).

/** At most so many files are asked about in one message. */
export const MAX_ASKED_BLOBS = 200;
/** A file may not be larger. Bytes. */
export const MAX_BLOB_BYTES = 100 * 1024 * 1024;

const hash = z.string().refine(isHex32, "64 lower-case hexadecimal digits");
const count = z.number().int().min(0);

/** Who the office is, and what it understands. */
export const greetingSchema = z.looseObject({
  format: z.literal("toeline-office/1"),
  /** the same for all its servers and for as long as it lives */
  office: z.string().min(1).max(200),
  era: count,
  /** what its clock says */
  time: z.iso.datetime({ offset: true }),
  program: z.string(),
  /** formats of messages that it takes */
  takes: z.array(z.string()),
});
export type Greeting = z.output<typeof greetingSchema>;

/** A file is reached through an entry that names it: by the place of that entry in its device's chain. */
export const blobRefSchema = z.looseObject({ device: hash, sequence: z.number().int().min(1), blob: hash });
export interface BlobRef {
  readonly device: string;
  readonly sequence: number;
  readonly blob: string;
}

export const blobsAskedSchema = z.looseObject({
  format: z.literal("toeline-files/1"),
  files: z.array(blobRefSchema).max(MAX_ASKED_BLOBS),
});

/** How far a file has come at the office; nothing of it: 0 of 0. */
export const blobStateSchema = z.looseObject({ size: count, received: count, isComplete: z.boolean() });
export type BlobState = z.output<typeof blobStateSchema>;

/** In the order of the question; null for a file that no entry held by the office names. */
export const blobsAnswerSchema = z.looseObject({
  format: z.literal("toeline-files-answer/1"),
  files: z.array(blobStateSchema.nullable()).max(MAX_ASKED_BLOBS),
});

/** Says over the live connection how many entries the office holds, when that has changed and now and then as a sign of life. */
export const liveSchema = z.looseObject({
  format: z.literal("toeline-live/1"),
  job: z.string(),
  era: count,
  size: count,
});
export type LiveMessage = z.output<typeof liveSchema>;

/** Reads a text as a message of a schema. Errors: sync.answer-damaged. */
export function readShaped<S extends z.ZodType>(text: string, schema: S): Result<z.output<S>, Issue> {
  const parsed = parseJson(text);
  if (!parsed.ok) return fail(error("sync.answer-damaged", { found: text.slice(0, 100) }));
  const shaped = schema.safeParse(parsed.value);
  if (shaped.success) return ok(shaped.data);
  const [first] = shaped.error.issues;
  return fail(
    error("sync.answer-damaged", { found: `${first?.path.join(".") ?? ""}: ${first?.message ?? ""}` }),
  );
}
