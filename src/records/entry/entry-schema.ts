import { z } from "zod";
import { isHex32, isHex64 } from "../crypto/hex.ts";
import { ENTRY_FORMAT } from "./entry.ts";

const hex32 = z.string().refine(isHex32, "64 lower-case hexadecimal digits");
const hex64 = z.string().refine(isHex64, "128 lower-case hexadecimal digits");
const counting = z.number().int().min(1).max(Number.MAX_SAFE_INTEGER);

/** ISO 8601 with seconds and an offset, as in 2026-03-02T07:10:00.250+01:00. */
export const WALL_TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,6})?(?:Z|[+-]\d\d:\d\d)$/;

export const wallTimeSchema = z
  .string()
  .refine((text) => WALL_TIME.test(text) && Number.isFinite(Date.parse(text)), "a time with its offset");

/** The envelope of an entry from outside. Unknown fields stay, in the envelope as in the body. */
export const entrySchema = z.looseObject({
  format: z.literal(ENTRY_FORMAT),
  id: hex32,
  signature: hex64,
  job: z.string().min(1).max(100),
  device: hex32,
  sequence: counting,
  previous: hex32.nullable(),
  seen: z.array(z.looseObject({ device: hex32, sequence: counting, id: hex32 })).max(1000),
  clock: z.looseObject({
    wall: wallTimeSchema,
    monotonic_ms: z.number().min(0),
    session: z.number().int().min(0),
    server_offset_ms: z.number().optional(),
    server_offset_age_ms: z.number().min(0).optional(),
  }),
  author: z.string().min(1).max(200),
  kind: z.string().regex(/^[a-z][a-z0-9-]{0,60}$/),
  revision: counting,
  // only that it is an object: what stands in it is looked at by the canonical form, which does not follow it without end
  body: z.record(z.string(), z.unknown()),
});
