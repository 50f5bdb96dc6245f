import type { elementsWords } from "../../words/elements/words.ts";

type Key = keyof (typeof elementsWords)["en"];

/** A cell of the schedule in a form. */
export interface CellField {
  readonly heading: string;
  readonly word: Key;
  /** of a number; undefined: a word */
  readonly unit?: string;
}

export const KIND: CellField = { heading: "kind", word: "kind" };

/** Cells of an element in the order of the form; reference and kind stand before them. */
export const ELEMENT_FIELDS: readonly CellField[] = [
  { heading: "easting_m", word: "easting", unit: "m" },
  { heading: "northing_m", word: "northing", unit: "m" },
  { heading: "head_level_m", word: "head", unit: "m" },
  { heading: "cutoff_level_m", word: "cutoff", unit: "m" },
  { heading: "toe_level_m", word: "toe", unit: "m" },
  { heading: "diameter_m", word: "diameter", unit: "m" },
  { heading: "length_m", word: "length", unit: "m" },
  { heading: "width_m", word: "width", unit: "m" },
  { heading: "orientation_deg", word: "orientation", unit: "°" },
  { heading: "rake_deg", word: "rake", unit: "°" },
  { heading: "rake_bearing_deg", word: "rakeBearing", unit: "°" },
  { heading: "group", word: "group" },
  { heading: "sequence", word: "sequence" },
  { heading: "role", word: "role" },
  { heading: "load_kn", word: "load", unit: "kN" },
];

export const TUBE_FIELDS: readonly CellField[] = [
  { heading: "offset_east_m", word: "offsetEast", unit: "m" },
  { heading: "offset_north_m", word: "offsetNorth", unit: "m" },
  { heading: "easting_m", word: "easting", unit: "m" },
  { heading: "northing_m", word: "northing", unit: "m" },
  { heading: "top_level_m", word: "topLevel", unit: "m" },
  { heading: "inner_diameter_mm", word: "innerDiameter", unit: "mm" },
  { heading: "length_m", word: "tubeLength", unit: "m" },
];
