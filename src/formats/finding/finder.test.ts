import { expect, test } from "vitest";
import { Finder, gatherFindings, MAX_FINDINGS_PER_FILE } from "./finder.ts";
import { nearestWord } from "./nearest-word.ts";

test("only a blocking error blocks", () => {
  const found = new Finder("a.csv");
  found.error("formats.cell-number", { line: 2 });
  found.warning("formats.depth-step", { line: 1 });
  expect(found.blocked).toBe(false);
  found.block("formats.cell-empty", { line: 3 });
  expect(found.blocked).toBe(true);
  expect(found.issues.map((issue) => issue.severity)).toEqual(["error", "warning", "error"]);
});

test("findings of several parts of one file stand together, by line", () => {
  const first = new Finder("job.json", () => 9);
  const second = new Finder("job.json", () => 4);
  const other = new Finder("x.csv");
  first.error("a.b", { field: "runs[1]" });
  other.note("a.c", { line: 1 });
  second.error("a.d", { field: "runs[0]" });
  expect(gatherFindings([first, other, second]).map((issue) => [issue.code, issue.place.line])).toEqual([
    ["a.d", 4],
    ["a.b", 9],
    ["a.c", 1],
  ]);
});

test("the finding that closes a long list is as severe as the worst that it hides", () => {
  const found = new Finder("a.csv");
  for (let i = 0; i < MAX_FINDINGS_PER_FILE; i++) found.note("a.b", { line: i });
  found.warning("a.b", { line: 200 });
  const [closing] = gatherFindings([found]).slice(-1);
  expect(closing).toMatchObject({ code: "formats.too-many", severity: "warning", values: { hidden: 1 } });
  found.error("a.b", { line: 201 });
  expect(gatherFindings([found]).at(-1)).toMatchObject({ severity: "error", values: { hidden: 2 } });
});

test.each([
  ["tilt_x_dge", "tilt_x_deg"],
  ["Temprature_C", "temperature_c"],
  ["weather", undefined],
  ["xy", undefined],
])("the word meant by %s is %s", (word, meant) => {
  expect(nearestWord(word, ["tilt_x_deg", "tilt_y_deg", "temperature_c"])).toBe(meant);
});
