import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import type { TableRow } from "../table/table.ts";

/** A line such as `$GPHDT,274.07,T*03`: a mark, an address, fields, and mostly a checksum. */
const SENTENCE = /^[$!]([^,*]+)((?:,[^*]*)?)(?:\*([0-9A-Fa-f]{2}))?\s*$/;

export const isSentence = (line: string): boolean => SENTENCE.test(line);

/** Rows made of sentences, with a heading for each field. */
export interface SentenceTable {
  readonly headings: readonly string[];
  readonly units: readonly string[];
  readonly rows: readonly TableRow[];
  /** lines whose checksum does not fit; nothing is read from them */
  readonly badLines: readonly number[];
}

interface Field {
  readonly name: string;
  readonly unit: string;
  readonly value: string;
}

/**
 * Reads sentences with checksum into rows. A row begins where a kind of sentence comes that the row already has.
 *
 * Nothing is read from a sentence whose checksum does not fit: each is told, and leaves its cells empty.
 *
 * Errors: logger.checksum, logger.sentence-form. Notes: logger.no-checksum.
 * Source: NMEA 0183: the checksum is the exclusive or of all characters between "$" and "*"; XDR carries fields in fours:
 *   type, value, unit, name.
 */
export function readSentences(lines: readonly string[], found: Finder): SentenceTable {
  const names = new Map<string, number>();
  const units: string[] = [];
  const rows: { line: number; cells: string[] }[] = [];
  const badLines: number[] = [];
  let kinds = new Set<string>();
  let unchecked = 0;
  for (const [index, text] of lines.entries()) {
    if (text.trim() === "") continue;
    const line = index + 1;
    const parts = SENTENCE.exec(text);
    if (parts === null) {
      found.error(
        "logger.sentence-form",
        { line },
        { found: excerpt(text), expected: "a sentence such as $…*hh" },
      );
      continue;
    }
    const [, address = "", rest = "", sum] = parts;
    if (kinds.has(address) || rows.length === 0) {
      rows.push({ line, cells: [] });
      kinds = new Set();
    }
    kinds.add(address);
    const right = checksumOf(address + rest);
    if (sum !== undefined && sum.toUpperCase() !== right) {
      badLines.push(line);
      found.error("logger.checksum", { line }, { found: sum.toUpperCase(), expected: right });
      continue;
    }
    if (sum === undefined) unchecked += 1;
    for (const { name, unit, value } of fieldsOf(address, rest.slice(1).split(","))) {
      const place = names.get(name) ?? names.size;
      if (!names.has(name)) {
        names.set(name, place);
        units.push(unit);
      }
      rows.at(-1)!.cells[place] = value;
    }
  }
  if (unchecked > 0) found.note("logger.no-checksum", {}, { found: unchecked, expected: "a checksum" });
  const filled = rows.filter(({ cells }) => cells.some((cell) => cell !== undefined));
  const wide = filled.map(({ line, cells }) => ({
    line,
    cells: Array.from({ length: names.size }, (_, i) => cells[i] ?? ""),
  }));
  return { headings: [...names.keys()], units, rows: wide, badLines };
}

/** Exclusive or of all characters, two hexadecimal digits. */
function checksumOf(text: string): string {
  let sum = 0;
  for (let i = 0; i < text.length; i++) sum ^= text.charCodeAt(i);
  return (sum & 0xff).toString(16).toUpperCase().padStart(2, "0");
}

/** Units of XDR: D = degrees, C = Celsius, M = metres. */
const XDR_UNITS: Readonly<Record<string, string>> = { D: "deg", C: "°C", M: "m" };

function fieldsOf(address: string, values: readonly string[]): readonly Field[] {
  if (!/XDR$/.test(address)) {
    return values.map((value, index) => ({
      name: `${address} ${index + 1}`,
      unit: /HD[TM]$/.test(address) && index === 0 ? "deg" : "",
      value,
    }));
  }
  const fields: Field[] = [];
  for (let i = 0; i + 3 < values.length; i += 4)
    fields.push({ name: values[i + 3]!, unit: XDR_UNITS[values[i + 2]!] ?? "", value: values[i + 1]! });
  return fields;
}
