/** Round steps that people count in: 1, 2 or 5 times a power of ten. */
export function roundStep(span: number, most: number): number {
  const rough = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const [first = 10] = [1, 2, 5, 10].filter((part) => part * power >= rough * (1 - 1e-9));
  return first * power;
}

/** A range of values on a stretch of the drawing, with ticks at round values. */
export interface PlotScale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** decimals that tell neighbouring ticks apart */
  readonly decimals: number;
  readonly place: (value: number) => number;
}

/**
 * A scale that holds all values, from tick to tick.
 *
 * @param start,end of the drawing. @param most ticks, about.
 */
export function plotScale(values: readonly number[], start: number, end: number, most: number): PlotScale {
  const known = values.filter(Number.isFinite);
  const least = known.reduce((low, value) => Math.min(low, value), known[0] ?? 0);
  const largest = known.reduce((high, value) => Math.max(high, value), known[0] ?? 1);
  const span = largest > least ? largest - least : Math.max(Math.abs(largest), 1);
  const step = roundStep(span, most);
  const from = Math.floor(least / step + 1e-9) * step;
  const to = Math.max(Math.ceil(largest / step - 1e-9) * step, from + step);
  const count = Math.round((to - from) / step);
  return {
    from,
    to,
    ticks: Array.from({ length: count + 1 }, (_, i) => from + i * step),
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
    place: (value) => start + ((value - from) / (to - from)) * (end - start),
  };
}
