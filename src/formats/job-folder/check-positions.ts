import type { DesignElement } from "#core";
import type { Finder } from "../finding/finder.ts";

/** An element this many times as far from the middle as half of them are, and further than FAR_M, is told. */
const FAR_RATIO = 20;
const FAR_M = 1000;
/** Two elements nearer than this stand on the same spot. */
const SAME_SPOT_M = 0.001;

/**
 * Looks at the positions of the elements as a set: swapped coordinates, one far away from all others, two on one spot.
 *
 * The figures are common practice, no source.
 *
 * Errors: formats.coordinates-swapped, formats.position-repeated. Warning: formats.position-far.
 * Frame: site NED.
 */
export function checkPositions(elements: readonly DesignElement[], found: Finder): void {
  tellSameSpot(elements, found);
  if (elements.length < 3) return;
  const north = median(elements.map((element) => element.head.north));
  const east = median(elements.map((element) => element.head.east));
  const distances = elements.map(({ head }) => Math.hypot(head.north - north, head.east - east));
  const usual = median(distances);
  for (const [index, { head, place }] of elements.entries()) {
    const distance = distances[index]!;
    if (!(distance > FAR_M && distance > FAR_RATIO * usual)) continue;
    const at = { line: place.line, field: "easting_m" };
    const swapped = Math.hypot(head.east - north, head.north - east);
    const where = `${head.east}, ${head.north}`;
    if (swapped < distance / FAR_RATIO)
      found.error("formats.coordinates-swapped", at, {
        found: where,
        expected: `${head.north}, ${head.east}`,
      });
    else {
      const values = {
        found: where,
        expected: `near ${east.toFixed(0)}, ${north.toFixed(0)}`,
        distance: Math.round(distance),
      };
      found.warning("formats.position-far", at, values);
    }
  }
}

function tellSameSpot(elements: readonly DesignElement[], found: Finder): void {
  const seen = new Map<string, DesignElement>();
  const cell = (value: number) => Math.round(value / SAME_SPOT_M);
  for (const element of elements) {
    const { head, kind, place } = element;
    // Raked elements may share a head on purpose, in an A-frame; then their directions differ.
    const lean =
      element.rakeRad > 0 ? `${cell(element.rakeRad)}/${cell(element.rakeBearingRad ?? 0)}` : "plumb";
    const spot = `${kind} ${cell(head.north)} ${cell(head.east)} ${lean}`;
    const first = seen.get(spot);
    if (first === undefined) {
      seen.set(spot, element);
      continue;
    }
    const values = {
      found: `${head.east}, ${head.north}`,
      expected: "a position of its own",
      other: first.id,
    };
    found.error("formats.position-repeated", { line: place.line, field: "easting_m" }, values);
  }
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
