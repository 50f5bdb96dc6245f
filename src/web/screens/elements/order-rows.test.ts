import { expect, test } from "vitest";
import type { ElementRow } from "../../worker/desk.ts";
import { filterRows, orderRows } from "./order-rows.ts";

const row = (id: string, group?: string, sequence?: number, toeLevelM?: number): ElementRow => ({
  id,
  kind: "bored-pile",
  group,
  sequence,
  role: undefined,
  section: undefined,
  eastM: 0,
  northM: 0,
  headLevelM: 0,
  cutoffLevelM: undefined,
  toeLevelM,
  rakeRad: 0,
  rakeBearingRad: undefined,
  runs: 0,
  verdict: undefined,
  deciding: undefined,
  lowestOffsetM: Number.NaN,
  findings: { error: 0, warning: 0, note: 0 },
  inConflict: false,
});

const ids = (rows: readonly ElementRow[]) => rows.map(({ id }) => id);

test("names stand as people count", () => {
  const rows = ["H10", "H2", "h1", "P3"].map((id) => row(id));
  expect(ids(orderRows(rows, { id: "element", isDown: false }, "en"))).toEqual(["h1", "H2", "H10", "P3"]);
});

test("within a wall the sequence counts, and elements without a wall stand last either way", () => {
  const rows = [row("a", "west", 2), row("b"), row("c", "west", 1), row("d", "east", 1)];
  expect(ids(orderRows(rows, { id: "group", isDown: false }, "en"))).toEqual(["d", "c", "a", "b"]);
  expect(ids(orderRows(rows, { id: "group", isDown: true }, "en")).at(-1)).toBe("b");
});

test("numbers stand by their value, what is not known last either way", () => {
  const rows = [row("a", undefined, undefined, -9), row("b"), row("c", undefined, undefined, -16)];
  expect(ids(orderRows(rows, { id: "toe", isDown: false }, "de"))).toEqual(["c", "a", "b"]);
  expect(ids(orderRows(rows, { id: "toe", isDown: true }, "de"))).toEqual(["a", "c", "b"]);
});

test("every word that is looked for must be there", () => {
  const rows = [row("H1", "north wall"), row("H2", "south wall")];
  expect(ids(filterRows(rows, "wall h2"))).toEqual(["H2"]);
  expect(ids(filterRows(rows, " "))).toEqual(["H1", "H2"]);
});
