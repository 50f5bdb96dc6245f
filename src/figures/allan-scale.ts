import { scaleLog } from "d3-scale";
import type { AllanCurve } from "#core";
import { BODY_TOP } from "./page.ts";

const LEFT = 84;
const RIGHT = 500;
const TOP = BODY_TOP + 18;
const HEIGHT = 380;
/** Empty rim, as a factor of what is drawn. */
const RIM = 1.25;
/** Within so many powers of ten the steps 2 and 5 are written as well. */
const FEW_DECADES = 2;

/** From averaging time and deviation to the page; both logarithmic. */
export interface AllanScale {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** ends of the axis of time, seconds */
  readonly times: readonly [number, number];
  readonly timeTicks: readonly number[];
  readonly deviationTicks: readonly number[];
  x(averagingTimeS: number): number;
  y(deviation: number): number;
}

/**
 * Fits a curve with its confidence intervals into the frame.
 *
 * @param convert from the unit of the curve to that of the axis.
 */
export function allanScale(curve: AllanCurve, convert: (deviation: number) => number): AllanScale {
  const times = [...curve.averagingTimeS].filter((time) => time > 0);
  const deviations = [...curve.deviation, ...curve.lower, ...curve.upper]
    .map(convert)
    .filter((value) => value > 0 && Number.isFinite(value));
  const timeEnds = ends(times);
  const deviationEnds = ends(deviations);
  const x = scaleLog(timeEnds, [LEFT, RIGHT]);
  const y = scaleLog(deviationEnds, [TOP + HEIGHT, TOP]);
  return {
    left: LEFT,
    right: RIGHT,
    top: TOP,
    bottom: TOP + HEIGHT,
    times: timeEnds,
    timeTicks: roundValues(timeEnds),
    deviationTicks: roundValues(deviationEnds),
    x: (time) => x(time),
    y: (deviation) => y(deviation),
  };
}

function ends(values: readonly number[]): [number, number] {
  if (values.length === 0) return [1, 10];
  return [Math.min(...values) / RIM, Math.max(...values) * RIM];
}

/** Powers of ten; with 2 and 5 between them where there would be too few. */
function roundValues([from, to]: readonly [number, number]): readonly number[] {
  const leading = Math.log10(to / from) > FEW_DECADES ? [1] : [1, 2, 5];
  const values: number[] = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.ceil(Math.log10(to)); power++)
    values.push(...leading.map((lead) => lead * 10 ** power));
  return values.filter((value) => value >= from && value <= to);
}
