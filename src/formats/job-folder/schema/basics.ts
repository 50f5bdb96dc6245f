import { z } from "zod";
import { DISTRIBUTION_SHAPES } from "#core";
import { momentOf } from "../../text/iso-time.ts";

export const text = z.string().min(1);
export const id = z
  .union([text, z.int()])
  .describe("Reference, unique among its kind. A whole number is read as text.");
export const degrees = z.number().min(-360).max(360);
export const north = z
  .enum(["magnetic", "true", "grid"])
  .describe("The north from which the angle is counted.");
export const moment = z
  .string()
  .refine((value) => momentOf(value) !== undefined, { params: { expected: "a date and time, ISO 8601" } })
  .meta({ format: "date-time", description: "ISO 8601, with offset or Z. Without one it is read as UTC." });
export const dateOrMoment = z
  .string()
  .refine((value) => momentOf(value) !== undefined, { params: { expected: "a date, ISO 8601" } })
  .describe("ISO 8601 date, or date and time. A date alone holds to the end of that day.");
export const vector = z.tuple([z.number(), z.number(), z.number()]);

/** Keys are sources of error with their unit, e.g. "tilt-noise_deg"; the sources are known to the budget. */
export const errors = z
  .record(
    z.string(),
    z.union([
      z.number().nonnegative(),
      z.strictObject({
        value: z.number().nonnegative(),
        distribution: z.enum(DISTRIBUTION_SHAPES).optional(),
      }),
    ]),
  )
  .describe(
    "Standard values (k = 1) in place of the usual ones, by source with unit, e.g. `tilt-noise_deg`.",
  );
export type ErrorsInput = z.infer<typeof errors>;

/** A reference as the program holds it. */
export const idText = (value: string | number): string => String(value).trim();
