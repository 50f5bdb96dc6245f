import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { budgetKey, classBudget, sourceValueFromSi } from "./budget.ts";
import { sourceKinds } from "./error-source.ts";
import { instrumentClasses } from "./instrument-class.ts";

const page = readFileSync(new URL("../../../docs/method/uncertainty.md", import.meta.url), "utf8");
const rows = page.split("\n").flatMap((line) => {
  const cells = line.split("|").map((cell) => cell.trim());
  const key = /^`([^`]+)`$/.exec(cells[1] ?? "")?.[1];
  return key === undefined ? [] : [{ key, reaches: cells[3] ?? "", values: cells[4] ?? "" }];
});

describe("[E1] the table of sources in docs/method/uncertainty.md", () => {
  test("has every source, in the order of the program, and no other", () => {
    expect(rows.map(({ key }) => key)).toEqual(sourceKinds.map(({ id }) => budgetKey(id)));
  });

  test.each(sourceKinds)(
    "$id repeats as the table says, with its value for every class",
    ({ id, repeats }) => {
      const row = rows.find(({ key }) => key === budgetKey(id))!;
      expect(row.reaches).toBe(repeats);
      const written = (/^[\d. /]+/.exec(row.values)?.[0] ?? "")
        .split("/")
        .map((value) => value.trim())
        .filter((value) => value !== "")
        .map(Number);
      const used = instrumentClasses.map(
        (each) => classBudget(each).find(({ source }) => source === id)?.value,
      );
      for (const [i, value] of used.entries()) {
        // the place of a tube has its usual value where elements are judged, not in a class
        if (value === undefined) continue;
        expect(sourceValueFromSi(id, value)).toBeCloseTo(written[i] ?? written[0] ?? Number.NaN, 9);
      }
      if (used.every((value) => value === undefined) && id !== "tube-position") expect(written).toEqual([]);
    },
  );

  test("names the classes in the order of the numbers", () => {
    expect(page).toContain(instrumentClasses.map(({ id }) => `\`${id}\``).join(" / "));
  });
});
