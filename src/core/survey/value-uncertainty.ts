import type { Measured, OffsetForm } from "../criteria/criterion.ts";
import type { ValueUncertainty } from "../criteria/decide.ts";
import { dot, ned } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { probabilityInsideCircle } from "../uncertainty/probability-inside-circle.ts";
import { probabilityBetween } from "../uncertainty/probability-of-value.ts";
import { differenceOf, type Effect, effectsOf, type UncertainAxis } from "./uncertain-axis.ts";

/** Effects of every unit of chance on an offset, in the plane square to the design axis, metres. */
export interface OffsetEffects {
  readonly along: readonly number[];
  readonly across: readonly number[];
  readonly effects: readonly Effect[];
}

/**
 * Effects on the offset of the axis where it passes the plane of the form.
 *
 * A point that is off along the hole is compared where the hole passes that plane, so an error along the axis counts only by the
 * lean between the two.
 *
 * Frame: along and across of the form. Source: rules E2, F1.
 */
export function offsetEffects(axis: UncertainAxis, form: OffsetForm): OffsetEffects {
  const lower = effectsOf(axis, form.atDepthM);
  const effects =
    form.fromDepthM === undefined ? lower : differenceOf(lower, effectsOf(axis, form.fromDepthM));
  const { tangent } = interpolatePath(axis.path, form.atDepthM);
  const { along, across, direction } = form.axes;
  const slide = dot(tangent, direction);
  const alongLean = dot(tangent, along) / slide;
  const acrossLean = dot(tangent, across) / slide;
  const moves = effects.map(({ north, east, down }) => ned(north, east, down));
  return {
    along: moves.map((move) => dot(move, along) - alongLean * dot(move, direction)),
    across: moves.map((move) => dot(move, across) - acrossLean * dot(move, direction)),
    effects,
  };
}

const sumOfProducts = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0);

/**
 * Standard uncertainty of a value that is an offset, and the probability that the true offset keeps its limit.
 *
 * Exact for a bivariate normal offset over a circle, or over a strip where one component is judged: near the centre and near the
 * limit the straight-line formula is wrong, and this is not.
 *
 * @returns undefined where the value is no offset at one place.
 *
 * Frame: along and across of the form. Source: rules E4, E5.
 * Checked against: test/published/offset-circle; Monte Carlo of the same budget (test/jobs).
 */
export function offsetUncertainty(axis: UncertainAxis, measured: Measured): ValueUncertainty | undefined {
  const { form } = measured;
  if (form === undefined) return undefined;
  const { along, across } = offsetEffects(axis, form);
  const [aa, ac, cc] = [
    sumOfProducts(along, along),
    sumOfProducts(along, across),
    sumOfProducts(across, across),
  ];
  const { alongM, acrossM, component, limitM } = form;
  if (component !== "both") {
    const [value, variance] = component === "along" ? [alongM, aa] : [acrossM, cc];
    const standard = Math.sqrt(variance);
    return {
      standardUncertainty: standard,
      probabilityWithin: probabilityBetween(value, standard, -limitM, limitM),
    };
  }
  const length = Math.hypot(alongM, acrossM);
  // at the very centre there is no direction of the offset: the larger axis speaks
  const [a, c] = length > 0 ? [alongM / length, acrossM / length] : [1, 0];
  const variance = length > 0 ? a * a * aa + 2 * a * c * ac + c * c * cc : Math.max(aa, cc);
  // the value may be a lean: the offset over a length
  const unit = limitM > 0 ? measured.limit / limitM : 1;
  return {
    standardUncertainty: Math.sqrt(variance) * unit,
    probabilityWithin: probabilityInsideCircle(
      { north: alongM, east: acrossM },
      { nn: aa, ne: ac, ee: cc },
      limitM,
    ),
  };
}
