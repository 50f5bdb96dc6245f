import { expect, test } from "vitest";
import { nearest } from "./nearest.ts";

test("finds the word that was meant, whatever its capitals", () => {
  expect(nearest("p12", ["P1", "P12", "Q12"])).toBe("P12");
  expect(nearest("pannel-3", ["panel-3", "panel-13"])).toBe("panel-3");
});

test("finds nothing where nothing is near", () => {
  expect(nearest("anchor", ["P1", "P2"])).toBeUndefined();
  expect(nearest("P1", [])).toBeUndefined();
});
