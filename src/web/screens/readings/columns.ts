import type { readingsWords } from "../../words/readings/words.ts";
import type { Words } from "../../words/use-words.ts";
import type { ReadingsTable } from "../../worker/desk.ts";

export type ReadingsWord = Words<keyof (typeof readingsWords)["en"]>;

interface Named {
  readonly word: keyof (typeof readingsWords)["en"];
  readonly unit: string | undefined;
}

/** Columns of readings as the job folder names them, without the unit that they carry in their name. */
const NAMES: Readonly<Record<string, Named>> = {
  time: { word: "colTime", unit: undefined },
  leg: { word: "colLeg", unit: undefined },
  face: { word: "colFace", unit: undefined },
  depth_m: { word: "colDepth", unit: "m" },
  depth_mm: { word: "colDepth", unit: "mm" },
  count: { word: "colCount", unit: undefined },
  tilt_x_deg: { word: "colTiltX", unit: "°" },
  tilt_y_deg: { word: "colTiltY", unit: "°" },
  turn_deg: { word: "colTurn", unit: "°" },
  temperature_c: { word: "colTemperature", unit: "°C" },
  acc_x: { word: "colAccX", unit: undefined },
  acc_y: { word: "colAccY", unit: undefined },
  acc_z: { word: "colAccZ", unit: undefined },
  inclination_deg: { word: "colInclination", unit: "°" },
  azimuth_deg: { word: "colAzimuth", unit: "°" },
  samples: { word: "colSamples", unit: undefined },
  se_tilt_x_deg: { word: "colSeX", unit: "°" },
  se_tilt_y_deg: { word: "colSeY", unit: "°" },
};

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
