import { expect, test } from "vitest";
import { csv } from "./csv.ts";

test("quotes what must be quoted, and leaves a missing number empty", () => {
  expect(
    csv(
      ["a", "b"],
      [
        ["x, y", Number.NaN],
        ['say "so"', -1.5],
      ],
    ),
  ).toBe('a,b\n"x, y",\n"say ""so""",-1.5\n');
});

test("never lets a spreadsheet take a name for a formula", () => {
  expect(csv(["a"], [["=1+1"], ["@x"], ["-0.0123"], ["+P1"]])).toBe("a\n'=1+1\n'@x\n-0.0123\n'+P1\n");
});
