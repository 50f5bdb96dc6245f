import { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import { isHex32 } from "../crypto/hex.ts";
import { error } from "../issue.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { parseJson } from "../json/parse-json.ts";

/** At most so many entries in one message. */
export const MAX_BATCH_ENTRIES = 200;
/** At most so many bytes of entries in one message. */
export const MAX_BATCH_BYTES = 256 * 1024;

const hash = z.string().refine(isHex32, "64 lower-case hexadecimal digits");
const job = z.string().min(1).max(100);
const count = z.number().int().min(0);
/** Raised when the office is restored from a back-up: what it has named as held before may be gone. */
const era = count;

/** A device sends what the office does not hold yet. Each entry is checked by itself, so their shape is not looked at here. */
const pushSchema = z.looseObject({
  format: z.literal("toeline-push/1"),
  job,
  entries: z.array(z.unknown()).max(MAX_BATCH_ENTRIES),
});

const refusedSchema = z.looseObject({
  /** place in the batch, from 0 */
  index: count,
  /** id that the entry claims to have */
  entry: hash.nullable(),
  code: z.string(),
});

/** What the office holds now that the batch is written. Only this list says that an entry is safe there. */
const pushAnswerSchema = z.looseObject({
  format: z.literal("toeline-push-answer/1"),
  job,
  era,
  held: z.array(hash).max(MAX_BATCH_ENTRIES),
  refused: z.array(refusedSchema),
  /** by device, the number up to which the office holds the chain without a gap */
  contiguous: z.record(hash, count),
  /** devices whose chain has two branches: a copied store; the device takes a new key */
  forked: z.array(hash),
});

/** A device asks for what came after a place in the office's order of arrival. */
const pullSchema = z.looseObject({
  format: z.literal("toeline-pull/1"),
  job,
  after: count,
});

const pullAnswerSchema = z.looseObject({
  format: z.literal("toeline-pull-answer/1"),
  job,
  era,
  /** place after which the page begins */
  from: count,
  entries: z.array(z.unknown()).max(MAX_BATCH_ENTRIES),
  more: z.boolean(),
  /** digest of all ids the office holds, with the last page: two sets are compared by this, not by their counts */
  digest: hash.nullable(),
});

export type PushRequest = z.output<typeof pushSchema>;
export type PushAnswer = z.output<typeof pushAnswerSchema>;
export type RefusedEntry = z.output<typeof refusedSchema>;
export type PullRequest = z.output<typeof pullSchema>;
export type PullAnswer = z.output<typeof pullAnswerSchema>;
export type SyncMessage = PushRequest | PushAnswer | PullRequest | PullAnswer;

/** The shape of every message by its format; also for descriptions that are published. */
export const messageSchemas = {
  "toeline-push/1": pushSchema,
  "toeline-push-answer/1": pushAnswerSchema,
  "toeline-pull/1": pullSchema,
  "toeline-pull-answer/1": pullAnswerSchema,
} as const;

/** The text of a message. Errors: those of canonicalJson. */
export const writeMessage = (message: SyncMessage): Result<string, Issue> => canonicalJson(message);

/**
 * Reads a message of the format asked for. What was cut on the way is no JSON any more and is told as such.
 *
 * Errors: records.not-json-text, records.message-shape.
 */
export function readMessage<F extends SyncMessage["format"]>(
  text: string,
  format: F,
): Result<Extract<SyncMessage, { format: F }>, Issue> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const shaped = messageSchemas[format].safeParse(parsed.value);
  // the schema of a format gives the message of that format
  if (shaped.success) return ok(shaped.data as Extract<SyncMessage, { format: F }>);
  const [first] = shaped.error.issues;
  const field = first?.path.join(".") ?? "";
  return fail(error("records.message-shape", { field, found: first?.message ?? "" }, field));
}
