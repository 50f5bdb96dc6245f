import type { Finder } from "../finding/finder.ts";
import { splitRows } from "../table/read-csv.ts";
import type { TableRow } from "../table/table.ts";
import { isSentence } from "./sentences.ts";
import { type CellSeparator, type Guess, guess } from "./settings.ts";

/** Lines from which the separator is told. */
const SAMPLE_LINES = 400;

/** Rows of a text by one separator (not of sentences). @returns undefined when the file is blocked. */
export function splitText(text: string, separator: CellSeparator, found: Finder): TableRow[] | undefined {
  if (separator === "blanks" || separator === "wide-blanks" || separator === "one-column")
    return text.split("\n").map((line, index) => ({ line: index + 1, cells: splitLine(line, separator) }));
  return splitRows(text, separator, found);
}

function splitLine(line: string, separator: CellSeparator): string[] {
  const trimmed = line.trim();
  if (trimmed === "") return [""];
  if (separator === "one-column") return [trimmed];
  return trimmed.split(separator === "blanks" ? /\s+/ : /\s{2,}|\t/);
}

/** Tried in this order; an earlier one counts where both split as evenly. */
const CANDIDATES: readonly CellSeparator[] = ["\t", ";", "|", ",", "wide-blanks", "blanks"];

/**
 * The separator that splits most lines into the same number of cells, at least two.
 *
 * A comma between digits can be a decimal sign: the comma counts only where no other splits as evenly.
 */
export function separatorOf(text: string): Guess<CellSeparator> {
  const lines = sampleOf(text).filter((line) => line.trim() !== "");
  const sentences = lines.filter(isSentence).length;
  if (sentences > 0.5 * lines.length)
    return guess("sentences", "certain", "logger.why-sentences", {
      found: sentences,
      expected: lines.length,
    });
  let best: { separator: CellSeparator; agreeing: number; cells: number } | undefined;
  for (const separator of CANDIDATES) {
    const { agreeing, cells } = evenness(lines, separator);
    if (cells < 2) continue;
    const isBetter = best === undefined || agreeing > best.agreeing * (separator === "blanks" ? 1.1 : 1);
    const isFiner = best !== undefined && agreeing === best.agreeing && mayBeFiner(separator, best.separator);
    if (isBetter || (isFiner && cells > best!.cells)) best = { separator, agreeing, cells };
  }
  if (best === undefined) return guess("one-column", "open", "logger.why-one-column");
  const share = best.agreeing / lines.length;
  return guess(
    best.separator,
    share > 0.6 ? "certain" : share > 0.3 ? "likely" : "open",
    "logger.why-separator",
    {
      found: best.agreeing,
      expected: lines.length,
    },
  );
}

/** Semicolon, tab and bar are never part of a number; a comma or a blank may be. */
const mayBeFiner = (separator: CellSeparator, than: CellSeparator): boolean =>
  separator === "blanks" || (separator === "," && than === "wide-blanks");

function sampleOf(text: string): readonly string[] {
  const lines = text.split("\n", 3 * SAMPLE_LINES);
  // headers of loggers can be long: the middle of the file is more like the rest of it
  return lines.length <= SAMPLE_LINES ? lines : lines.slice(-SAMPLE_LINES);
}

/** The number of cells that most lines have, and how many lines have it. */
function evenness(lines: readonly string[], separator: CellSeparator): { agreeing: number; cells: number } {
  const counts = new Map<number, number>();
  for (const line of lines) {
    const cells = cellsIn(line, separator);
    if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
  }
  let best = { agreeing: 0, cells: 1 };
  for (const [cells, agreeing] of counts)
    if (agreeing > best.agreeing || (agreeing === best.agreeing && cells > best.cells))
      best = { agreeing, cells };
  return best;
}

function cellsIn(line: string, separator: CellSeparator): number {
  if (separator === "blanks" || separator === "wide-blanks") return splitLine(line, separator).length;
  let cells = 1;
  let isQuoted = false;
  for (let i = 0; i < line.length; i++) {
    if (line[i] === '"') isQuoted = !isQuoted;
    else if (!isQuoted && line[i] === separator) cells += 1;
  }
  return cells;
}
