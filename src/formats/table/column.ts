/** What the cells of a column hold. "length" may be given in m or mm, as its heading says. */
export type ColumnKind = "length" | "angle" | "azimuth" | "number" | "text" | "word" | "time";

/** A column of the contract. */
export interface Column {
  /** heading of the contract, with its unit */
  readonly name: string;
  readonly kind: ColumnKind;
  /** smallest and largest value that can be meant: metres for lengths, else the unit of the heading */
  readonly min?: number;
  readonly max?: number;
  /** words that may stand in a "word" column */
  readonly words?: readonly string[];
  /** numbers such as 9999 may really occur in it, e.g. counts */
  readonly anyNumber?: boolean;
}

/** Where a column of the contract stands in one file. */
export interface PlacedColumn extends Column {
  readonly index: number;
  /** heading as the file writes it */
  readonly heading: string;
  /** metres in one unit of the heading, for lengths */
  readonly factor: number;
}

const UNIT_ENDING = /_(m|mm|deg|c|kn|kg|s)$/;

/** Heading without its unit; undefined for a column that has none. */
export const stemOf = (column: Column): string | undefined =>
  UNIT_ENDING.test(column.name) ? column.name.replace(UNIT_ENDING, "") : undefined;

/** Headings under which a column of the contract may stand, with metres a unit. */
export function acceptedHeadings(
  column: Column,
): readonly { readonly heading: string; readonly factor: number }[] {
  if (column.kind !== "length") return [{ heading: column.name, factor: 1 }];
  const stem = stemOf(column)!;
  return [
    { heading: `${stem}_m`, factor: 1 },
    { heading: `${stem}_mm`, factor: 0.001 },
  ];
}
