import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../issue.ts";
import { isJsonObject } from "./json-value.ts";

/** Deeper nesting than any entry has; keeps a hostile one from running out of stack. */
const MAX_DEPTH = 60;

/** Read by code points, only a surrogate without its other half is left. */
const LONE_SURROGATE = /\p{Surrogate}/u;

/**
 * The canonical form of a JSON value: the same text for the same value, on every machine.
 *
 * No white space, keys in the order of their UTF-16 code units, numbers as ECMAScript prints them, no Unicode
 * normalisation. Beyond the standard it refuses the character U+0000, which some databases cannot hold.
 *
 * @returns the text, or the first thing that JSON cannot say, with its place such as `body.columns.depth_m[3]`.
 *
 * Errors: records.not-json, records.number-not-finite, records.text-surrogate, records.text-null, records.too-deep.
 * Source: RFC 8785, JSON Canonicalization Scheme, sections 3.2.1 to 3.2.4.
 * Checked against: test/published/rfc-8785
 */
export function canonicalJson(value: unknown): Result<string, Issue> {
  const found: { issue: Issue | undefined } = { issue: undefined };
  const text = write(value, "", 0, found);
  return found.issue === undefined ? ok(text) : fail(found.issue);
}

/** Letters that every text may hold, and that stand for themselves or are escaped alike by everybody. */
const PLAIN_TEXT = /^[\x20-\x7e]*$/;

/** What JSON.stringify writes in the canonical form. */
const isPlain = (item: unknown): boolean =>
  typeof item === "number"
    ? Number.isFinite(item)
    : item === null || (typeof item === "string" && PLAIN_TEXT.test(item));

interface Found {
  issue: Issue | undefined;
}

function write(value: unknown, path: string, depth: number, found: Found): string {
  if (found.issue !== undefined) return "";
  if (value === null || typeof value === "boolean") return String(value);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) return refuse(found, "records.number-not-finite", path, String(value));
    // JSON.stringify prints numbers by the very rules that the standard names, and -0 as 0
    return JSON.stringify(value);
  }
  if (typeof value === "string") return writeText(value, path, found);
  if (depth >= MAX_DEPTH) return refuse(found, "records.too-deep", path, String(depth));
  if (Array.isArray(value)) {
    // a column of readings holds nothing that needs a closer look: the platform writes it as a whole, several times faster
    if (value.every(isPlain) && !value.includes(undefined)) return JSON.stringify(value);
    const items = Array.from(value, (item: unknown, i) => write(item, `${path}[${i}]`, depth + 1, found));
    return `[${items.join(",")}]`;
  }
  if (isJsonObject(value)) return writeObject(value, path, depth, found);
  return refuse(found, "records.not-json", path, value === undefined ? "undefined" : typeof value);
}

function writeObject(
  object: Readonly<Record<string, unknown>>,
  path: string,
  depth: number,
  found: Found,
): string {
  // the standard order of `sort` compares UTF-16 code units, which is the order asked for
  const members = Object.keys(object)
    .sort()
    .map((key) => {
      const place = path === "" ? key : `${path}.${key}`;
      return `${writeText(key, place, found)}:${write(object[key], place, depth + 1, found)}`;
    });
  return `{${members.join(",")}}`;
}

function writeText(text: string, path: string, found: Found): string {
  if (LONE_SURROGATE.test(text)) return refuse(found, "records.text-surrogate", path, JSON.stringify(text));
  if (text.includes("\u0000")) return refuse(found, "records.text-null", path, JSON.stringify(text));
  return JSON.stringify(text);
}

function refuse(found: Found, code: string, path: string, value: string): string {
  found.issue ??= error(code, { field: path, found: value.slice(0, 100) }, path);
  return "";
}
