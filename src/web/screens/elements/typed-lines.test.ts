import { expect, test } from "vitest";
import { ELEMENT_FIELDS } from "./element-fields.ts";
import { remainingLines } from "./remaining-lines.ts";
import { changedCells, typedCells } from "./typed-cells.ts";

test("comma and point are both decimal marks; what is no number stays for the reader to tell", () => {
  const cells = typedCells(ELEMENT_FIELDS, {
    easting_m: "1 214,40 m",
    toe_level_m: "−16.5",
    head_level_m: "four",
    group: " north, east ",
  });
  expect(cells).toEqual({
    easting_m: "1214.4",
    toe_level_m: "-16.5",
    head_level_m: "four",
    group: "north, east",
  });
});

test("only cells that are another text are changed, an emptied one among them", () => {
  const before = { group: "north", role: "", toe_level_m: "-16" };
  expect(changedCells(before, { group: "", role: "", toe_level_m: "-16" })).toEqual({ group: "" });
});

test("lines with an error stay, with the heading", () => {
  const text = "element\tkind\nH1\tbored-pile\nH2\tpole\n\nH3\tpile";
  const at = (line: number, severity: "error" | "warning") => ({
    code: "formats.kind-unknown",
    severity,
    place: { file: "elements.csv", line },
    values: {},
  });
  expect(remainingLines(text, [at(3, "error"), at(5, "error"), at(2, "warning")])).toBe(
    "element\tkind\nH2\tpole\nH3\tpile",
  );
  expect(remainingLines(text, [])).toBe("");
});
