import { z } from "zod";
import { isHex32 } from "#records";

const hash = z.string().refine(isHex32, "64 lower-case hexadecimal digits");

/** Place of a job in an address. */
export const jobParameter = z.object({ job: z.string().min(1).max(100) });

/** Place of a file: below the entry that names it. */
export const fileParameters = jobParameter.extend({
  device: hash.describe("device that wrote the entry which names the file"),
  sequence: z.coerce.number().int().min(1).describe("number of that entry"),
  blob: hash.describe("SHA-256 of the file"),
});
export type FilePlace = z.output<typeof fileParameters>;
