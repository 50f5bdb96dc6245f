import type { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../issue.ts";
import type { JsonObject, JsonValue } from "../json/json-value.ts";

export type Language = "en" | "de";

/** What an entry does to the state of the job. The kind says it; the fold knows no kind by name. */
export type Effect =
  /** gives a field of a thing a value; null clears it. Two devices may do so without knowing of each other: a conflict */
  | { readonly does: "set"; readonly thing: string; readonly field: string; readonly value: JsonValue }
  /** puts something into a list of a thing, for good: two devices cannot be in each other's way */
  | { readonly does: "add"; readonly thing: string; readonly list: string; readonly value: JsonValue };

/** What the program needs to know about a kind of entry. */
export interface EntryKind {
  readonly id: string;
  /** raised when the meaning of the body changes; a field that is added does not change it */
  readonly revision: number;
  readonly text: Readonly<Record<Language, { readonly name: string; readonly explanation: string }>>;
  /** a body with every field, invented */
  readonly example: JsonObject;
  /** the shape of the body, for schemas that are published */
  readonly schema: z.ZodType;
  /** Errors: records.body-shape. */
  read(body: unknown): Result<readonly Effect[], readonly Issue[]>;
}

interface Definition<S extends z.ZodType> extends Omit<EntryKind, "read" | "schema"> {
  readonly schema: S;
  readonly effects: (body: z.output<S>) => readonly Effect[];
}

/** A kind from its schema and from what a body of that shape does. */
export function defineKind<S extends z.ZodType>(definition: Definition<S>): EntryKind {
  const { effects, ...rest } = definition;
  return {
    ...rest,
    read: (body) => {
      const shaped = definition.schema.safeParse(body);
      if (shaped.success) return ok(effects(shaped.data));
      return fail(
        shaped.error.issues.map(({ path, message }) => {
          const field = path.join(".");
          return error("records.body-shape", { kind: definition.id, field, found: message }, field);
        }),
      );
    },
  };
}

/** The name of a thing in the state: its type and its ids, so written that no two things share a name. */
export const thingKey = (type: string, ...ids: readonly string[]): string =>
  [type, ...ids.map(encodeURIComponent)].join("/");

/** One effect for every field that a body sets. */
export const setEach = (thing: string, fields: Readonly<Record<string, unknown>>): readonly Effect[] =>
  Object.entries(fields).map(([field, value]) => ({ does: "set", thing, field, value: value as JsonValue }));

/** One effect that puts the whole of a body into a list. */
export const addTo = (thing: string, list: string, body: Readonly<Record<string, unknown>>): Effect => ({
  does: "add",
  thing,
  list,
  value: body as JsonObject,
});
