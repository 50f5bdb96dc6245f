import { expect, test } from "vitest";
import { fingerprint } from "./fingerprint.ts";

test("the same content has the same fingerprint, one sign more or less another", () => {
  const text = "depth_m,tilt_x_deg\n0.5,0.412\n";
  expect(fingerprint(text)).toBe(fingerprint(`${text}`));
  const others = new Set<string>();
  for (let i = 0; i < text.length; i++) others.add(fingerprint(`${text.slice(0, i)}#${text.slice(i + 1)}`));
  expect(others.size).toBe(text.length);
  expect(others.has(fingerprint(text))).toBe(false);
});

test("columns are told apart by their last bit, and only the part that is seen counts", () => {
  const column = Float64Array.of(1, 2, 3);
  expect(fingerprint(column)).not.toBe(fingerprint(Float64Array.of(1, 2, 3 + 4e-16)));
  expect(fingerprint(column.subarray(1))).toBe(fingerprint(Float64Array.of(2, 3)));
});
