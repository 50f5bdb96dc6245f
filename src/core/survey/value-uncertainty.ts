import type { Measured, OffsetForm } from "../criteria/criterion.ts";
import type { ValueUncertainty } from "../criteria/decide.ts";
import { dot, scale, subtract } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import type { SourceId } from "../uncertainty/error-source.ts";
import { probabilityInsideCircle } from "../uncertainty/probability-inside-circle.ts";
import { probabilityBetween } from "../uncertainty/probability-of-value.ts";
import { differenceOf, effectsOf, type UncertainAxis } from "./uncertain-axis.ts";

/** Covariance of an offset in the plane square to the design axis, square metres. */
export interface OffsetCovariance {
  readonly alongAlong: number;
  readonly alongAcross: number;
  readonly acrossAcross: number;
  /** variance of along and across together that each source brings */
  readonly bySource: ReadonlyMap<SourceId, number>;
}

/**
 * Covariance of the offset of an axis where it passes the plane of the form.
 *
 * A point that is off along the hole is compared where the hole passes that plane, so an error along the axis counts only by the
 * lean between the two.
 *
 * Frame: along and across of the form. Source: rules E2, F1.
 */
export function offsetCovariance(
  axis: UncertainAxis,
  form: Pick<OffsetForm, "fromDepthM" | "atDepthM" | "axes">,
): OffsetCovariance {
  const lower = effectsOf(axis, form.atDepthM);
  const effects =
    form.fromDepthM === undefined ? lower : differenceOf(lower, effectsOf(axis, form.fromDepthM));
  const { tangent } = interpolatePath(axis.path, form.atDepthM);
  const { along, across, direction } = form.axes;
  const slide = dot(tangent, direction);
  // one row a component: a move goes to along less its part along the hole times the lean there
  const alongRow = subtract(along, scale(direction, dot(tangent, along) / slide));
  const acrossRow = subtract(across, scale(direction, dot(tangent, across) / slide));
  let [alongAlong, alongAcross, acrossAcross] = [0, 0, 0];
  const bySource = new Map<SourceId, number>();
  for (const { source, values } of effects) {
    let own = 0;
    for (let i = 0; i < values.length; i += 3) {
      const a = alongRow.north * values[i]! + alongRow.east * values[i + 1]! + alongRow.down * values[i + 2]!;
      const c =
        acrossRow.north * values[i]! + acrossRow.east * values[i + 1]! + acrossRow.down * values[i + 2]!;
      alongAlong += a * a;
      alongAcross += a * c;
      acrossAcross += c * c;
      own += a * a + c * c;
    }
    bySource.set(source, (bySource.get(source) ?? 0) + own);
  }
  return { alongAlong, alongAcross, acrossAcross, bySource };
}

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
  const { alongAlong: aa, alongAcross: ac, acrossAcross: cc } = offsetCovariance(axis, form);
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
