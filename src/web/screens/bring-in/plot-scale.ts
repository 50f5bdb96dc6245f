/** Limits of numbers; NaN is passed over. An empty or flat range is widened, so that it can be drawn. */
export function rangeOf(values: Iterable<number>): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (low > high) return [0, 1];
  return low === high ? [low - 0.5, high + 0.5] : [low, high];
}

/** An SVG path through points; a missing one breaks it. */
export function pathOf(
  x: Float64Array,
  y: Float64Array,
  toX: (value: number) => number,
  toY: (value: number) => number,
): string {
  let path = "";
  let isOpen = false;
  for (const [i, value] of x.entries()) {
    const depth = y[i] ?? Number.NaN;
    if (Number.isNaN(value) || Number.isNaN(depth)) {
      isOpen = false;
      continue;
    }
    path += `${isOpen ? "L" : "M"}${toX(value).toFixed(1)} ${toY(depth).toFixed(1)}`;
    isOpen = true;
  }
  return path;
}
