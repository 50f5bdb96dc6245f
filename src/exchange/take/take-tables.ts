import type { CellTable, CellValue } from "#formats";
import { type JsonObject, type JsonValue, thingKey } from "#records";
import { isTaken, shapedFields } from "./shaped.ts";
import type { TakenThing } from "./taken.ts";

export interface TakenTable {
  readonly things: readonly TakenThing[];
  /** rows without a reference of their own, or with one that came before: cell by heading */
  readonly rest: readonly JsonObject[];
}

/**
 * The rows of the schedule or of the tubes as things.
 *
 * @param idColumns headings that name the thing, which are also the type of its name's parts.
 */
export function takeTable(
  kind: "element" | "tube",
  idColumns: readonly string[],
  table: CellTable,
): TakenTable {
  const things: TakenThing[] = [];
  const rest: JsonObject[] = [];
  const seen = new Set<string>();
  for (let row = 0; row < table.count; row++) {
    const cells = rowOf(table, row);
    const ids = Object.fromEntries(idColumns.map((name) => [name, cells[name]]));
    const names = Object.values(ids).filter((id): id is string => typeof id === "string");
    const thing = thingKey(kind, ...names);
    const isNamed =
      names.length === idColumns.length && isTaken(kind, { ...ids, set: { withdrawn: null } } as JsonObject);
    if (!isNamed || seen.has(thing)) {
      rest.push(cells);
      continue;
    }
    seen.add(thing);
    const fields = Object.fromEntries(Object.entries(cells).filter(([name]) => !idColumns.includes(name)));
    things.push({ kind, thing, ids: ids as JsonObject, set: shapedFields(kind, ids as JsonObject, fields) });
  }
  return { things, rest };
}

function rowOf({ headings, columns }: CellTable, row: number): Readonly<Record<string, JsonValue>> {
  return Object.fromEntries(headings.map((heading, i) => [heading, columns[i]![row] as CellValue]));
}
