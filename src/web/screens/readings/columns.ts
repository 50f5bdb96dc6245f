import type { readingsWords } from "../../words/readings/words.ts";
import type { Words } from "../../words/use-words.ts";
import type { ReadingsTable } from "../../worker/desk.ts";

export type ReadingsWord = Words<keyof (typeof readingsWords)["en"]>;

interface Named {
  readonly word: keyof (typeof readingsWords)["en"];
  readonly unit: string | undefined;
}

/** Columns of readings as the job folder names them, in the order in which people read them. */
const NAMES: Readonly<Record<string, Named>> = {
  depth_m: { word: "colDepth", unit: "m" },
  depth_mm: { word: "colDepth", unit: "mm" },
  count: { word: "colCount", unit: undefined },
  leg: { word: "colLeg", unit: undefined },
  face: { word: "colFace", unit: undefined },
  tilt_x_deg: { word: "colTiltX", unit: "°" },
  tilt_y_deg: { word: "colTiltY", unit: "°" },
  acc_x: { word: "colAccX", unit: undefined },
  acc_y: { word: "colAccY", unit: undefined },
  acc_z: { word: "colAccZ", unit: undefined },
  inclination_deg: { word: "colInclination", unit: "°" },
  azimuth_deg: { word: "colAzimuth", unit: "°" },
  turn_deg: { word: "colTurn", unit: "°" },
  time: { word: "colTime", unit: undefined },
  temperature_c: { word: "colTemperature", unit: "°C" },
  samples: { word: "colSamples", unit: undefined },
  se_tilt_x_deg: { word: "colSeX", unit: "°" },
  se_tilt_y_deg: { word: "colSeY", unit: "°" },
};

/** Where each column of a table stands in the order in which people read them; those that nobody has named come last. */
export function readingOrder(columns: readonly string[]): readonly number[] {
  const order = Object.keys(NAMES);
  const rank = (column: string) => (order.includes(column) ? order.indexOf(column) : order.length);
  return columns.map((_, at) => at).toSorted((a, b) => rank(columns[a]!) - rank(columns[b]!));
}

/** Head of a column in words, with its unit. A column that nobody has named keeps its own name. */
export function headOf(
  column: string,
  word: ReadingsWord,
): { readonly title: string; readonly unit: string | undefined } {
  const named = NAMES[column];
  return named === undefined
    ? { title: column, unit: undefined }
    : { title: word(named.word), unit: named.unit };
}

/** Most decimals that a column was recorded with, so that all of it is shown alike; undefined where it holds words. */
export function decimalsOf({ columns, rows }: ReadingsTable, column: string): number | undefined {
  const at = columns.indexOf(column);
  let most = 0;
  let isNumber = false;
  for (const { cells } of rows) {
    const cell = cells[at] ?? null;
    if (cell === null || cell === "") continue;
    if (typeof cell !== "number") return undefined;
    isNumber = true;
    most = Math.max(most, (String(cell).split(".")[1] ?? "").length);
  }
  return isNumber ? Math.min(most, MOST) : undefined;
}
const MOST = 6;
