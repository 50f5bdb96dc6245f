import type { DesignElement } from "../elements/element.ts";
import type { CriterionRequest, NotMeasured } from "./criterion.ts";
import { diameterM, type Row, stepFor } from "./steps.ts";

/** How far the axis may lie from its place at a level, metres; undefined = that direction has no limit of its own. */
export interface Allowance {
  readonly radialM: number | undefined;
  readonly alongM: number | undefined;
  readonly acrossM: number | undefined;
}

/**
 * Allowed offset of an element at a level: a constant, a part of the diameter, the smaller or larger of the two, or a
 * row of a table, and what it grows by with depth.
 *
 * @param downM level as down = -level, metres.
 * Frame: none.
 * Source: rule shapes of the standards in docs/method/sets.md.
 */
export function allowanceAt(
  element: DesignElement,
  downM: number,
  request: CriterionRequest,
): Allowance | NotMeasured {
  const { numbers, words, tables } = request;
  const rows = tables["steps"];
  const row: Row | NotMeasured = rows === undefined ? numbers : stepFor(rows, element);
  if ("reason" in row) return row as NotMeasured;
  const perDiameter = rows === undefined ? row["limit_per_diameter"] : row["per_diameter"];
  const diameter = diameterM(element);
  if (perDiameter !== undefined && diameter === undefined) return { reason: "criteria.no-section" };
  const byDiameter = perDiameter === undefined ? undefined : perDiameter * (diameter ?? Number.NaN);
  const combine = words["combine"] === "max" ? Math.max : Math.min;
  const base = combined(row["limit_m"], byDiameter, combine);

  const growthPerM = row["growth_m_per_m"] ?? numbers["growth_m_per_m"] ?? 0;
  const startDown = words["growth_from"] === "cutoff" ? element.cutoffDownM : element.head.down;
  if (growthPerM !== 0 && startDown === undefined) return { reason: "criteria.no-cutoff" };
  const growth = growthPerM === 0 ? 0 : growthPerM * Math.max(0, downM - (startDown ?? Number.NaN));
  const grown = (limit: number | undefined) => (limit === undefined ? undefined : limit + growth);
  return {
    radialM: grown(base === undefined ? undefined : clamp(base, row["at_least_m"], row["at_most_m"])),
    alongM: grown(numbers["limit_along_m"]),
    acrossM: grown(numbers["limit_across_m"]),
  };
}

function combined(
  a: number | undefined,
  b: number | undefined,
  combine: (a: number, b: number) => number,
): number | undefined {
  return a !== undefined && b !== undefined ? combine(a, b) : (a ?? b);
}

function clamp(value: number, atLeast: number | undefined, atMost: number | undefined): number {
  return Math.min(Math.max(value, atLeast ?? value), atMost ?? Number.POSITIVE_INFINITY);
}
