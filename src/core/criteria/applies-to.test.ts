import { expect, test } from "vitest";
import { element, request } from "../../../test/fixtures/judged-axis.ts";
import { appliesTo } from "./applies-to.ts";

/** element P1: a bored pile, group "wall A", role "P" */
test.each([
  ["all", {}, true],
  ["its kind", { kind: "bored-pile" }, true],
  ["another kind", { kind: "panel" }, false],
  ["one of several kinds", { kind: ["panel", "bored-pile"] }, true],
  ["none of several kinds", { kind: ["panel", "anchor"] }, false],
  ["an empty list", { kind: [] }, false],
  ["its group", { group: "wall A" }, true],
  ["a part of its group's name", { group: "wall" }, false],
  ["its role", { role: ["S", "P"] }, true],
  ["its id", { element: "P1" }, true],
  ["another id", { element: ["P2", "P11"] }, false],
  ["all that is asked", { kind: "bored-pile", role: "P", element: ["P1", "P2"] }, true],
  ["one thing not fitting", { kind: "bored-pile", role: "S" }, false],
  ["a key that nobody knows", { colour: "red" }, false],
] as const)("a rule for %s", (_what, asked, expected) => {
  expect(appliesTo(request("verticality", { appliesTo: asked }), element())).toBe(expected);
});

test("an element without a group is not in any group", () => {
  expect(appliesTo(request("verticality", { appliesTo: { group: "" } }), element({ group: undefined }))).toBe(
    false,
  );
});
