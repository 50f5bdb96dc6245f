import { describe, expect, test } from "vitest";
import { tableLines } from "./table.ts";

interface Row {
  readonly name: string;
  readonly value: string;
}

const columns = [
  { heading: "Name", cell: (row: Row) => row.name },
  { heading: "Value", align: "right" as const, cell: (row: Row) => row.value },
  { heading: "", cell: () => "end" },
];

describe("a table", () => {
  test("is as wide as its widest cell, numbers to the right, nothing after the last word", () => {
    const rows = [
      { name: "P1", value: "7 mm" },
      { name: "North-12", value: "123 mm" },
    ];
    expect(tableLines(columns, rows)).toEqual([
      "Name       Value",
      "P1          7 mm  end",
      "North-12  123 mm  end",
    ]);
  });

  test("counts a letter with an accent as one, however it is written", () => {
    const [, first, second] = tableLines(columns, [
      { name: "Mu\u0308nchen", value: "1" },
      { name: "München", value: "1" },
    ]);
    expect(first?.normalize("NFC")).toBe(second);
  });

  test("puts colour outside of the padding, so that columns stay straight", () => {
    const painted = [
      { heading: "A", cell: (row: Row) => row.name, paint: (_: Row, text: string) => `<${text}>` },
      { heading: "B", cell: (row: Row) => row.value },
    ];
    expect(
      tableLines(painted, [
        { name: "x", value: "1" },
        { name: "long", value: "2" },
      ]),
    ).toEqual(["A     B", "<x   >  1", "<long>  2"]);
  });

  test("without rows shows its headings", () => {
    expect(tableLines(columns, [])).toEqual(["Name  Value"]);
  });
});
