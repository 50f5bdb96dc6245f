import { z } from "zod";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import { pathOfKey } from "../json/parse-json.ts";

type Problem = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/**
 * Holds a part of job.json against its schema; every mismatch becomes a finding with the path of the field.
 *
 * Strict about types, tolerant about keys that the schema does not know: they are warned about and passed over.
 *
 * @param path of the part, e.g. "runs[3]".
 * @returns the part, or undefined when it has an error.
 * Errors: formats.json-missing, formats.json-type, formats.json-range, formats.json-choice. Warning: formats.json-unknown-key.
 */
export function checkItem<S extends z.ZodType>(
  schema: S,
  value: unknown,
  path: string,
  found: Finder,
): z.infer<S> | undefined {
  const checked = schema.safeParse(value);
  if (checked.success) return checked.data;
  let usable = true;
  for (const problem of checked.error.issues) {
    if (problem.code === "unrecognized_keys") {
      const keys = knownKeys(schema, problem.path, value);
      for (const key of problem.keys)
        tellUnknownKey(pathOfKey(fieldOf(path, problem.path), key), key, keys, found);
    } else {
      usable = false;
      tell(problem, value, path, found);
    }
  }
  // The schemas neither convert nor add anything, so what has only unknown keys too many is already what it should be.
  return usable ? (value as z.infer<S>) : undefined;
}

export function tellUnknownKey(field: string, key: string, known: readonly string[], found: Finder): void {
  const nearest = nearestWord(key, known);
  const expected = nearest ?? `one of ${known.join(", ")}`;
  found.warning("formats.json-unknown-key", { field }, { found: excerpt(key), expected });
}

function tell(problem: Problem, value: unknown, path: string, found: Finder): void {
  const field = fieldOf(path, problem.path);
  const actual = valueAt(value, problem.path);
  const expected = expectedBy(problem);
  if (actual === undefined) {
    found.block("formats.json-missing", { field }, { found: "nothing", expected });
    return;
  }
  found.block(codeOf(problem), { field }, { found: excerpt(actual), expected });
}

function codeOf(problem: Problem): string {
  if (problem.code === "too_small" || problem.code === "too_big") return "formats.json-range";
  if (problem.code === "invalid_value") return "formats.json-choice";
  return problem.code === "invalid_union" && "discriminator" in problem && problem.discriminator !== undefined
    ? "formats.json-choice"
    : "formats.json-type";
}

const NAMES: Readonly<Record<string, string>> = {
  string: "a text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object in braces",
  record: "an object in braces",
};

function expectedBy(problem: Problem): string {
  switch (problem.code) {
    case "invalid_type":
      return NAMES[problem.expected] ?? problem.expected;
    case "invalid_value":
      return problem.values.map(String).join(", ");
    case "too_small":
      return `${problem.inclusive === true ? "at least" : "more than"} ${problem.minimum}${unitOf(problem.origin)}`;
    case "too_big":
      return `${problem.inclusive === true ? "at most" : "less than"} ${problem.maximum}${unitOf(problem.origin)}`;
    case "invalid_format":
      return "EPSG:n or local";
    case "custom":
      return String(problem.params?.["expected"] ?? "another value");
    case "invalid_union":
      return problem.errors.length === 0 ? "a known kind" : unionExpected(problem.errors);
    default:
      return "another value";
  }
}

/** What any of the branches would take, each once. */
function unionExpected(branches: readonly (readonly Problem[])[]): string {
  const wanted = branches.flatMap((branch) => branch.slice(0, 1).map(expectedBy));
  return [...new Set(wanted)].join(" or ");
}

function unitOf(origin: string): string {
  if (origin === "array") return " entries";
  return origin === "string" ? " characters" : "";
}

/** Path in the way of findings: `runs[3]` + ["opening", "heading_deg"]. */
export function fieldOf(path: string, inside: Path): string {
  return inside.reduce<string>(
    (field, key) => (typeof key === "number" ? `${field}[${key}]` : pathOfKey(field, String(key))),
    path,
  );
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === "object" && inner !== null && Object.hasOwn(inner, key)
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

/** Keys that the schema knows at a path. */
function knownKeys(schema: z.ZodType, path: Path, value: unknown): readonly string[] {
  let inner: unknown = plainSchema(schema, value);
  let here: unknown = value;
  for (const key of path) {
    here = valueAt(here, [key]);
    if (inner instanceof z.ZodObject) inner = inner.shape[String(key)];
    else if (inner instanceof z.ZodArray) inner = inner.element;
    inner = plainSchema(inner, here);
  }
  return inner instanceof z.ZodObject ? Object.keys(inner.shape) : [];
}

/** Without "optional", and for a choice by kind the branch of that kind. */
function plainSchema(schema: unknown, value: unknown): unknown {
  if (schema instanceof z.ZodOptional) return plainSchema(schema.unwrap(), value);
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema;
  const kind = valueAt(value, ["kind"]);
  return schema.options.find(
    (option) => option instanceof z.ZodObject && option.shape["kind"]?.safeParse(kind).success === true,
  );
}
