import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { request } from "../../../test/fixtures/judged-axis.ts";
import type { CriterionRequest } from "./criterion.ts";
import { criteria, criterion } from "./registry.ts";

const page = readFileSync(new URL("../../../docs/method/criteria.md", import.meta.url), "utf8");

type Rows = readonly Readonly<Record<string, number>>[];
type Written = Readonly<Record<string, number | string | Rows>> & { readonly kind: string };
const examples = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map(
  (match) => JSON.parse(match[1]!) as Written,
);

function requestOf(written: Written): CriterionRequest {
  const numbers: Record<string, number> = {};
  const words: Record<string, string> = {};
  const tables: Record<string, Rows> = {};
  for (const [key, value] of Object.entries(written)) {
    if (["id", "kind", "applies_to", "source"].includes(key)) continue;
    if (typeof value === "number") numbers[key] = value;
    else if (typeof value === "string") words[key] = value;
    else tables[key] = value;
  }
  return request(written.kind, { numbers, words, tables });
}

test.each(examples.map((written) => [JSON.stringify(written), written] as const))(
  "the example can be used as it stands: %s",
  (_text, written) => {
    expect(criterion(written.kind)?.check(requestOf(written))).toEqual([]);
  },
);

describe.each(criteria.map((kind) => [kind.id, kind] as const))("%s", (id, kind) => {
  const [, section = ""] = page.split(`\n## ${id}\n`);
  const own = section.split("\n## ")[0]!;

  test("has a section with an example, a formula and words for a figure", () => {
    expect(examples.some((written) => written.kind === id)).toBe(true);
    expect(own).toMatch(/\n {4}\S/);
    expect(own).toContain("In a figure:");
  });

  test("names every parameter and every word that can be chosen", () => {
    for (const { key } of [...kind.parameters, ...kind.choices, ...kind.tables])
      expect(own).toContain(`\`${key}\``);
    for (const { values } of kind.choices) for (const value of values) expect(own).toContain(`\`${value}\``);
    for (const { columns } of kind.tables)
      for (const { key } of columns) expect(page).toContain(`\`${key}\``);
  });
});
