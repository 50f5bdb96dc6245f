import { fail, ok, type Result } from "#core";

/** Deeper nesting than any file of ours has; keeps the reader from running out of stack. */
const MAX_DEPTH = 60;

export interface JsonDocument {
  readonly value: unknown;
  /** line of a field, counted from 1; the path is written like `runs[3].opening.heading_deg`, "" is the whole */
  lineOf(path: string): number | undefined;
  /** keys that stand twice in one object; the first one was kept */
  readonly repeatedKeys: readonly { readonly path: string; readonly line: number }[];
}

export interface JsonMistake {
  readonly line: number;
  readonly found: string;
  readonly expected: string;
}

/** The path of a key inside an object, "a.b"; at the top just the key. */
export const pathOfKey = (path: string, key: string): string => (path === "" ? key : `${path}.${key}`);

/**
 * Reads JSON (RFC 8259) and remembers on which line every field stands, so that a finding can point at it.
 *
 * @returns the document, or the first mistake with its line.
 */
export function parseJson(text: string): Result<JsonDocument, JsonMistake> {
  return new JsonText(text).document();
}

/** One pass over one text. */
class JsonText {
  readonly #text: string;
  #at = 0;
  #line = 1;
  #counted = 0;
  #mistake: JsonMistake | undefined;
  readonly #lines = new Map<string, number>();
  readonly #repeated: { path: string; line: number }[] = [];

  constructor(text: string) {
    this.#text = text;
  }

  document(): Result<JsonDocument, JsonMistake> {
    const value = this.#value("", 0);
    this.#skipSpace();
    if (this.#mistake === undefined && this.#at < this.#text.length) this.#wrong("the end of the file");
    if (this.#mistake !== undefined) return fail(this.#mistake);
    const lines = this.#lines;
    return ok({ value, lineOf: (path) => lines.get(path), repeatedKeys: this.#repeated });
  }

  #value(path: string, depth: number): unknown {
    this.#skipSpace();
    if (depth > MAX_DEPTH) return this.#wrong(`at most ${MAX_DEPTH} levels of brackets`);
    this.#lines.set(path, this.#lineHere());
    const first = this.#text[this.#at];
    if (first === "{") return this.#object(path, depth);
    if (first === "[") return this.#array(path, depth);
    if (first === '"') return this.#string();
    return this.#numberOrWord();
  }

  #object(path: string, depth: number): unknown {
    const entries = new Map<string, unknown>();
    this.#at += 1;
    if (this.#take("}")) return {};
    do {
      this.#skipSpace();
      if (this.#text[this.#at] !== '"') return this.#wrong("a key in double quotes");
      const line = this.#lineHere();
      const key = this.#string();
      if (this.#mistake !== undefined) return undefined;
      if (!this.#take(":")) return this.#wrong("a colon after the key");
      const keyPath = pathOfKey(path, key);
      const repeated = entries.has(key);
      if (repeated) this.#repeated.push({ path: keyPath, line });
      const value = this.#value(repeated ? `${keyPath} (again)` : keyPath, depth + 1);
      if (this.#mistake !== undefined) return undefined;
      if (!repeated) entries.set(key, value);
    } while (this.#take(","));
    if (!this.#take("}")) return this.#wrong("a comma or }");
    return Object.fromEntries(entries);
  }

  #array(path: string, depth: number): unknown {
    const values: unknown[] = [];
    this.#at += 1;
    if (this.#take("]")) return values;
    do {
      values.push(this.#value(`${path}[${values.length}]`, depth + 1));
      if (this.#mistake !== undefined) return undefined;
    } while (this.#take(","));
    return this.#take("]") ? values : this.#wrong("a comma or ]");
  }

  #string(): string {
    let end = this.#at + 1;
    while (end < this.#text.length && this.#text[end] !== '"' && this.#text[end] !== "\n")
      end += this.#text[end] === "\\" ? 2 : 1;
    const raw = this.#text.slice(this.#at, end + 1);
    if (!/^"(?:[^"\\\p{Cc}]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"$/u.test(raw)) {
      this.#wrong("a string that ends with a double quote on the same line");
      return "";
    }
    this.#at = end + 1;
    return JSON.parse(raw) as string;
  }

  #numberOrWord(): unknown {
    const token = /^[^\s,:\]}[{"]*/.exec(this.#text.slice(this.#at, this.#at + 400))?.[0] ?? "";
    if (token === "true" || token === "false" || token === "null") {
      this.#at += token.length;
      return token === "null" ? null : token === "true";
    }
    if (!/^-?(0|[1-9]\d*)(\.\d+)?([eE][+-]?\d+)?$/.test(token)) return this.#wrong("a value");
    this.#at += token.length;
    return Number(token);
  }

  #take(character: string): boolean {
    if (this.#mistake !== undefined) return false;
    this.#skipSpace();
    if (this.#text[this.#at] !== character) return false;
    this.#at += 1;
    return true;
  }

  #skipSpace(): void {
    while (this.#at < this.#text.length && " \n\t\r".includes(this.#text[this.#at]!)) this.#at += 1;
  }

  #lineHere(): number {
    for (; this.#counted < this.#at; this.#counted++) if (this.#text[this.#counted] === "\n") this.#line += 1;
    return this.#line;
  }

  #wrong(expected: string): undefined {
    if (this.#mistake !== undefined) return undefined;
    const found = this.#text.slice(this.#at, this.#at + 20).trim();
    this.#mistake = { line: this.#lineHere(), found: found === "" ? "the end of the file" : found, expected };
    return undefined;
  }
}
