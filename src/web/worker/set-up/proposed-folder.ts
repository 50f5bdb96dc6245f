import {
  type CellTable,
  elementHeadings,
  type FolderReader,
  folderFromFiles,
  parseJson,
  readElementCells,
  tubeHeadings,
  writeCsv,
} from "#formats";
import { type JsonObject, utf8 } from "#records";
import type { ScheduleInput, Swap, TypedRow } from "../desk-set-up.ts";
import { fillColumns, nameHeadings } from "./known-headings.ts";

type Files = Map<string, string | Uint8Array>;

export interface ProposedFolder {
  readonly folder: FolderReader;
  readonly headings: readonly (readonly [string, string])[];
  /** names of the tables that were proposed; findings of others are not of this */
  readonly proposed: readonly string[];
}

/** A job folder that has the proposed tables and the settings of the job, without runs: the readers of the contract read it. */
export async function proposedFolder(
  files: ReadonlyMap<string, string | Uint8Array>,
  input: ScheduleInput,
  swap: Swap,
): Promise<ProposedFolder> {
  const made: Files = new Map([["job.json", settingsText(files.get("job.json"))]]);
  const headings = await addTables(made, files, input);
  const proposed = [...made.keys()].filter((name) => name !== "job.json");
  const isTubesOnly = !proposed.some((name) => name.startsWith("elements"));
  const schedule = files.get("elements.csv");
  if (isTubesOnly && schedule !== undefined) made.set("elements.csv", schedule);
  const folder = folderFromFiles(made);
  if (swap === "none") return { folder, headings, proposed };
  const cells = await readElementCells(folder);
  if (!cells.ok || cells.value === undefined) return { folder, headings, proposed };
  made.delete("elements.xlsx");
  made.set("elements.csv", csvOf(exchanged(cells.value, swap)));
  return { folder: folderFromFiles(made), headings, proposed: [...proposed, "elements.csv"] };
}

async function addTables(
  made: Files,
  files: ReadonlyMap<string, string | Uint8Array>,
  input: ScheduleInput,
): Promise<ProposedFolder["headings"]> {
  switch (input.from) {
    case "typed": {
      const order = input.table === "tubes" ? tubeHeadings : elementHeadings;
      made.set(`${input.table}.csv`, typedText(order, input.rows));
      return [];
    }
    case "edit": {
      const cells = await readElementCells(folderFromFiles(files));
      const rows = cells.ok && cells.value !== undefined ? rowsOf(cells.value) : [];
      const edited = rows
        .filter((row) => input.elements.includes(row["element"] ?? ""))
        .map((row) => ({ ...row, ...input.set }));
      made.set("elements.csv", typedText(elementHeadings, edited));
      return [];
    }
    case "files":
      return input.files.flatMap(({ name, bytes }) => addFile(made, name, bytes, input.fill ?? {}));
  }
}

function addFile(
  made: Files,
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
  fill: TypedRow,
): ProposedFolder["headings"] {
  if (/\.xlsx$/i.test(name)) {
    made.set("elements.xlsx", bytes);
    return [];
  }
  // what is no UTF-8 is left to the reader, which tells it
  const decoded = new TextDecoder().decode(bytes);
  if (decoded.includes("\uFFFD")) {
    made.set("elements.csv", bytes);
    return [];
  }
  const named = nameHeadings(decoded);
  made.set(
    named.isTubes ? "tubes.csv" : "elements.csv",
    named.isTubes ? named.text : fillColumns(named.text, fill),
  );
  return named.headings;
}

const rowsOf = ({ headings, columns, count }: CellTable): readonly TypedRow[] =>
  Array.from({ length: count }, (_, row) =>
    Object.fromEntries(headings.map((heading, i) => [heading, String(columns[i]![row] ?? "")])),
  );

function typedText(order: readonly string[], rows: readonly TypedRow[]): string {
  const used = new Set(rows.flatMap((row) => Object.keys(row)));
  const headings = [
    ...order.filter((heading) => used.has(heading)),
    ...[...used].filter((heading) => !order.includes(heading)),
  ];
  return writeCsv(
    headings,
    headings.map((heading) => rows.map((row) => (row[heading] === "" ? null : (row[heading] ?? null)))),
  );
}

const csvOf = ({ headings, columns }: CellTable): string => writeCsv(headings, columns);

/** The table with east and north exchanged, in all lines or in those of some elements. */
function exchanged(table: CellTable, swap: Exclude<Swap, "none">): CellTable {
  const place = (heading: string) => table.headings.indexOf(heading);
  const [element, east, north] = [place("element"), place("easting_m"), place("northing_m")];
  const [ids, easts, norths] = [table.columns[element], table.columns[east], table.columns[north]];
  if (ids === undefined || easts === undefined || norths === undefined) return table;
  const isMeant = (row: number) => swap === "all" || swap.includes(String(ids[row]));
  const columns = table.columns.map((cells, i) => {
    const other = i === east ? norths : i === north ? easts : cells;
    return cells.map((cell, row) => (isMeant(row) ? (other[row] ?? null) : cell));
  });
  return { ...table, columns };
}

/** The settings of the job, without what rests on readings. A job that says nothing of its place lies on a grid of its own. */
function settingsText(held: string | Uint8Array | undefined): string {
  const text =
    held === undefined ? "{}" : new TextDecoder().decode(typeof held === "string" ? utf8(held) : held);
  const parsed = parseJson(text);
  const settings = (parsed.ok ? parsed.value.value : {}) as JsonObject;
  const place = settings["place"] ?? { crs: "local" };
  return JSON.stringify({
    format: "toeline-job/1",
    name: "-",
    ...settings,
    place,
    instruments: [],
    calibrations: [],
    runs: [],
  });
}
