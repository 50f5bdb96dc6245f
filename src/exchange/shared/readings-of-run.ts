import type { CellValue } from "#formats";
import type { JsonObject, ThingState } from "#records";
import { isObject, objectOf } from "./objects.ts";
import { ROW_FIELD } from "./settled.ts";

/** A row of a run and the entry that it came with. */
export interface HeldRow {
  readonly entry: string;
  readonly row: number;
  readonly isAside: boolean;
  readonly columns: Readonly<Record<string, readonly CellValue[]>>;
}

/** Every row of a run, those that were set aside too, in the order of the log. @param fields of the run, settled. */
export function rowsOfRun(thing: ThingState | undefined, fields: JsonObject): readonly HeldRow[] {
  const aside = new Set(
    Object.entries(fields).flatMap(([field, value]) =>
      ROW_FIELD.test(field) && objectOf(value)["aside"] === true ? [field] : [],
    ),
  );
  return (thing?.lists["readings"] ?? []).flatMap(({ value, by }) => {
    const columns = columnsOf(objectOf(value)["columns"]);
    const count = Object.values(columns)[0]?.length ?? 0;
    return Array.from({ length: count }, (_, row) => ({
      entry: by.entry,
      row,
      isAside: aside.has(`row/${by.entry}/${row}`),
      columns,
    }));
  });
}

const columnsOf = (value: unknown): Readonly<Record<string, readonly CellValue[]>> =>
  isObject(value) ? (value as unknown as Readonly<Record<string, readonly CellValue[]>>) : {};

/** Headings that occur in any of the rows. */
export function headingsOf(rows: readonly HeldRow[]): readonly string[] {
  const all = new Set<string>();
  let last: HeldRow["columns"] | undefined;
  for (const { columns } of rows) {
    if (columns === last) continue;
    last = columns;
    for (const heading of Object.keys(columns)) all.add(heading);
  }
  return [...all];
}
