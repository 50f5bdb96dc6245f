import type { Issue, Place, Severity } from "#core";

/** Findings shown for one file; more of them are counted and told in one closing finding. */
export const MAX_FINDINGS_PER_FILE = 100;

type Values = Issue["values"];
type At = Omit<Place, "file">;

/**
 * Gathers what a reader finds in one part of the input.
 *
 * An error does not by itself make the part unusable: `block` is an error that does.
 * Stops storing after `MAX_FINDINGS_PER_FILE`, so that a wrong file cannot fill the memory.
 */
export class Finder {
  readonly issues: Issue[] = [];
  /** true once something was found that leaves this part without a meaning */
  blocked = false;
  /** findings made after the last one that is kept */
  hidden = 0;
  hiddenSeverity: Severity = "note";
  readonly #file: string;
  readonly #lineOf: ((field: string) => number | undefined) | undefined;

  /** @param lineOf line in the file of a field that is given without one. */
  constructor(file: string, lineOf?: (field: string) => number | undefined) {
    this.#file = file;
    this.#lineOf = lineOf;
  }

  error(code: string, at: At, values: Values = {}): void {
    this.#add("error", code, at, values);
  }

  /** An error after which this part of the input cannot be used. */
  block(code: string, at: At, values: Values = {}): void {
    this.blocked = true;
    this.#add("error", code, at, values);
  }

  warning(code: string, at: At, values: Values = {}): void {
    this.#add("warning", code, at, values);
  }

  note(code: string, at: At, values: Values = {}): void {
    this.#add("note", code, at, values);
  }

  #add(severity: Severity, code: string, at: At, values: Values): void {
    if (this.issues.length >= MAX_FINDINGS_PER_FILE) {
      this.hidden += 1;
      this.hiddenSeverity = worse(this.hiddenSeverity, severity);
      return;
    }
    const line = at.line ?? (at.field === undefined ? undefined : this.#lineOf?.(at.field));
    const place: Place = {
      file: this.#file,
      ...(line === undefined ? {} : { line }),
      ...(at.field === undefined ? {} : { field: at.field }),
    };
    this.issues.push({ code, severity, place, values });
  }
}

/**
 * All findings of all parts, file by file, at most `MAX_FINDINGS_PER_FILE` a file in the order of their lines.
 *
 * Where more were made, a last finding `formats.too-many` says how many are not shown; it is as severe as the worst of them.
 */
export function gatherFindings(finders: readonly Finder[]): Issue[] {
  const files = new Map<string, { issues: Issue[]; hidden: number; severity: Severity }>();
  for (const finder of finders) {
    for (const issue of finder.issues) fileOf(files, issue.place.file ?? "").issues.push(issue);
    if (finder.hidden > 0) {
      const file = fileOf(files, finder.issues[0]?.place.file ?? "");
      file.hidden += finder.hidden;
      file.severity = worse(file.severity, finder.hiddenSeverity);
    }
  }
  return [...files].flatMap(([name, file]) => shown(name, file));
}

function shown(name: string, file: { issues: Issue[]; hidden: number; severity: Severity }): Issue[] {
  const sorted = file.issues.toSorted((a, b) => (a.place.line ?? 0) - (b.place.line ?? 0));
  const rest = sorted.slice(MAX_FINDINGS_PER_FILE);
  const hidden = file.hidden + rest.length;
  if (hidden === 0) return sorted;
  const severity = rest.reduce<Severity>((worst, issue) => worse(worst, issue.severity), file.severity);
  const values = { shown: MAX_FINDINGS_PER_FILE, hidden };
  const closing: Issue = { code: "formats.too-many", severity, place: { file: name }, values };
  return [...sorted.slice(0, MAX_FINDINGS_PER_FILE), closing];
}

function fileOf(
  files: Map<string, { issues: Issue[]; hidden: number; severity: Severity }>,
  name: string,
): { issues: Issue[]; hidden: number; severity: Severity } {
  const known = files.get(name);
  if (known !== undefined) return known;
  const fresh = { issues: [], hidden: 0, severity: "note" as Severity };
  files.set(name, fresh);
  return fresh;
}

const RANK: Readonly<Record<Severity, number>> = { note: 0, warning: 1, error: 2 };
const worse = (a: Severity, b: Severity): Severity => (RANK[a] >= RANK[b] ? a : b);
