import { z } from "zod";
import { hash, line, reference, signature, thing, time } from "./basics.ts";

export const SEAL_FORMAT = "toeline-seal/1";

/** What a person signs: who, what it means, and exactly which entries. */
export const sealStatementSchema = z.looseObject({
  format: z.literal(SEAL_FORMAT),
  job: reference,
  about: thing,
  meaning: line.min(1),
  person: reference,
  name: line.min(1),
  at: time,
  covers: z.looseObject({
    /** last entry of each device that counts, by device */
    up_to: z.record(hash, z.number().int().min(1)),
    /** how many entries about the thing there are up to there */
    count: z.number().int().min(1),
    /** root of the tree over the ids of those entries */
    root: hash,
  }),
});

export const sealSchema = z.looseObject({ statement: sealStatementSchema, public_key: hash, signature });

export type SealStatement = z.output<typeof sealStatementSchema>;
export type Seal = z.output<typeof sealSchema>;
