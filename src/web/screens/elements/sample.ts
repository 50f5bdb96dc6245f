/** Invented lines that show how a schedule can look, with tabs as spreadsheets give them. */
export const SAMPLE = [
  [
    "element",
    "kind",
    "diameter_m",
    "easting_m",
    "northing_m",
    "head_level_m",
    "toe_level_m",
    "group",
    "sequence",
  ],
  ["H1", "bored-pile", "0.9", "1200.00", "3400.00", "4.50", "-16.00", "north wall", "1"],
  ["H2", "bored-pile", "0.9", "1201.60", "3400.00", "4.50", "-16.00", "north wall", "2"],
  ["H3", "bored-pile", "0.9", "1203.20", "3400.00", "4.50", "-16.00", "north wall", "3"],
]
  .map((cells) => cells.join("\t"))
  .join("\n");
