import { readTypedNumber } from "../../components/typed-number.ts";
import type { TypedRow } from "../../worker/desk-set-up.ts";
import type { CellField } from "./element-fields.ts";

/**
 * What was typed into a form as cells: numbers with a decimal point, whatever mark was typed. What is no number stays as it is, so
 * that the readers say what is wrong with it.
 */
export function typedCells(fields: readonly CellField[], typed: TypedRow): TypedRow {
  return Object.fromEntries(
    fields.flatMap(({ heading, unit }) => {
      const text = typed[heading];
      if (text === undefined) return [];
      const read = unit === undefined ? undefined : readTypedNumber(text, unit);
      return [[heading, read?.kind === "number" ? String(read.value) : text.trim()] as const];
    }),
  );
}

/** Cells that are another text than before. */
export const changedCells = (before: TypedRow, now: TypedRow): TypedRow =>
  Object.fromEntries(Object.entries(now).filter(([heading, text]) => text !== (before[heading] ?? "")));
