import { LEGS, type Leg, layOutRun, type Measures } from "#core";
import type { ReadingsTable } from "../desk.ts";
import type { ReadingSeries } from "../desk-review.ts";

/** The two columns of each kind of readings that show most of how a hole runs. */
const SHOWN: Readonly<Record<Measures, readonly [string, string]>> = {
  "tilt-turn": ["tilt_x_deg", "tilt_y_deg"],
  "keyed-tilt": ["tilt_x_deg", "tilt_y_deg"],
  "acceleration-turn": ["acc_x", "acc_y"],
  "inclination-azimuth": ["inclination_deg", "azimuth_deg"],
};

/** The columns that are plotted; undefined where the run does not have them. */
export function shownColumns(
  table: ReadingsTable,
  measures: Measures | undefined,
): { readonly x: string; readonly y: string } | undefined {
  const [x, y] = SHOWN[measures ?? "tilt-turn"];
  return table.columns.includes(x) && table.columns.includes(y) ? { x, y } : undefined;
}

/** Readings as they were recorded, pass by pass against depth; those that were set aside too. */
export function readingSeries(
  table: ReadingsTable,
  columns: { readonly x: string; readonly y: string } | undefined,
): readonly ReadingSeries[] {
  if (columns === undefined) return [];
  const depths = depthColumn(table);
  if (depths === undefined) return [];
  const column = (name: string): readonly (string | number | null)[] => {
    const at = table.columns.indexOf(name);
    return table.rows.map(({ cells }) => (at < 0 ? null : (cells[at] ?? null)));
  };
  const faces = Uint8Array.from(column("face"), (face) => Number(face) || 0);
  const layout = layOutRun(column("leg").map(legOf), faces, depths);
  const [x, y] = [column(columns.x).map(numberOf), column(columns.y).map(numberOf)];
  return layout.passes.map(({ direction, face, repeat, rows }) => ({
    direction,
    face,
    repeat,
    depthM: rows.map((row) => depths[row]!),
    x: rows.map((row) => x[row] ?? null),
    y: rows.map((row) => y[row] ?? null),
    row: rows,
  }));
}

/** Depths in metres; counts of a depth device are shown by their number, which is as good to see the course. */
function depthColumn({ columns, rows }: ReadingsTable): Float64Array | undefined {
  const at = ["depth_m", "depth_mm", "count"]
    .map((name) => columns.indexOf(name))
    .find((place) => place >= 0);
  if (at === undefined) return undefined;
  const factor = columns[at] === "depth_mm" ? 0.001 : 1;
  return Float64Array.from(rows, ({ cells }) => factor * (numberOf(cells[at] ?? null) ?? Number.NaN));
}

const legOf = (cell: string | number | null): Leg => LEGS.find((leg) => leg === cell) ?? "";

function numberOf(cell: string | number | null): number | null {
  if (typeof cell === "number") return cell;
  const value = cell === null || cell.trim() === "" ? Number.NaN : Number(cell.replace(",", "."));
  return Number.isFinite(value) ? value : null;
}
