import { z } from "zod";
import { isHex32, isHex64 } from "../crypto/hex.ts";
import { wallTimeSchema } from "../entry/entry-schema.ts";

/** A reference that people give: "P12", "probe-a". */
export const reference = z.string().min(1).max(100);
export const line = z.string().max(500);
export const prose = z.string().min(1).max(20_000);
export const metres = z.number();
export const degrees = z.number();
export const time = wallTimeSchema;
export const hash = z.string().refine(isHex32, "64 lower-case hexadecimal digits");
export const signature = z.string().refine(isHex64, "128 lower-case hexadecimal digits");
/** The name of a thing, as `thingKey` writes it. */
export const thing = z.string().regex(/^[a-z][a-z-]*(?:\/[^/\s]+)*$/);
/** Whatever JSON can say, for parts whose shape belongs to the job folder. */
export const anything = z.json();

/**
 * Fields that can be set, each by itself: at least one, null to clear one. Fields that are not named here are kept too.
 */
export function settable<S extends z.ZodRawShape>(shape: S) {
  const each = Object.fromEntries(
    Object.entries(shape).map(([key, type]) => [key, (type as z.ZodType).nullable().optional()]),
  ) as { [K in keyof S]: z.ZodOptional<z.ZodNullable<S[K] & z.ZodType>> };
  return z.looseObject(each).refine((set) => Object.keys(set).length > 0, "at least one field");
}
