import type { JsonObject, JsonValue } from "#records";

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The value as an object; an empty one where it is none. */
export const objectOf = (value: JsonValue | undefined): JsonObject => (isObject(value) ? value : {});

/** An object without the fields that are not there. */
export function filled(fields: Readonly<Record<string, JsonValue | undefined>>): JsonObject {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([key, value]) => (value === undefined ? [] : [[key, value] as const])),
  );
}

/** An object without some of its fields. */
export const without = (object: JsonObject, ...names: readonly string[]): JsonObject =>
  Object.fromEntries(Object.entries(object).filter(([key]) => !names.includes(key)));
