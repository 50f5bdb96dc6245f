import { expect, test } from "vitest";
import { tableText } from "./table-text.ts";

const columns = [
  { title: "Element", text: (row: readonly string[]) => row[0]! },
  { title: "Offset", unit: "mm", text: (row: readonly string[]) => row[1]! },
];

test("a table is copied with units in its heads, a tab between cells, a line a row", () => {
  expect(
    tableText(columns, [
      ["B1", "12"],
      ["B2", "−3"],
    ]),
  ).toBe("Element\tOffset (mm)\nB1\t12\nB2\t-3");
});

test("a negative number stays a number; what a spreadsheet would take for a formula becomes text", () => {
  expect(tableText(columns, [["=1+1", "−0,5"]]).split("\n")[1]).toBe("'=1+1\t-0,5");
  expect(tableText(columns, [["-cmd", "@x"]]).split("\n")[1]).toBe("'-cmd\t'@x");
});

test("tabs and line ends inside a cell do not break the table", () => {
  expect(tableText(columns, [["a\tb\nc", "1"]]).split("\n")).toEqual(["Element\tOffset (mm)", "a b c\t1"]);
});
