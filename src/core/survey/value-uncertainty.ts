import type { Measured, OffsetForm } from "../criteria/criterion.ts";
import type { ValueUncertainty } from "../criteria/decide.ts";
import { dot, scale, subtract } from "../geometry/vector.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { errorEllipse } from "../uncertainty/error-ellipse.ts";
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
  const own = spreadOf(axis, form);
  // the value may be a lean: the offset over a length
  const unit = form.limitM > 0 ? measured.limit / form.limitM : 1;
  return {
    standardUncertainty: own.standardM * unit,
    probabilityWithin: probabilityOf(form, own.covariance),
  };
}

interface Spread {
  readonly covariance: OffsetCovariance;
  /** standard uncertainty of the length that is judged, metres */
  readonly standardM: number;
}

function spreadOf(axis: UncertainAxis, form: OffsetForm): Spread {
  const covariance = offsetCovariance(axis, form);
  const { alongAlong: aa, alongAcross: ac, acrossAcross: cc } = covariance;
  const { alongM, acrossM, component } = form;
  if (component === "along") return { covariance, standardM: Math.sqrt(aa) };
  if (component === "across") return { covariance, standardM: Math.sqrt(cc) };
  const length = Math.hypot(alongM, acrossM);
  // at the very centre there is no direction of the offset: the larger axis speaks
  if (!(length > 0)) return { covariance, standardM: errorEllipse({ nn: aa, ne: ac, ee: cc }).semiMajor };
  const [a, c] = [alongM / length, acrossM / length];
  return { covariance, standardM: Math.sqrt(a * a * aa + 2 * a * c * ac + c * c * cc) };
}

function probabilityOf(form: OffsetForm, covariance: OffsetCovariance): number {
  const { alongAlong: nn, alongAcross: ne, acrossAcross: ee } = covariance;
  const { alongM, acrossM, component, limitM } = form;
  if (component === "along") return probabilityBetween(alongM, Math.sqrt(nn), -limitM, limitM);
  if (component === "across") return probabilityBetween(acrossM, Math.sqrt(ee), -limitM, limitM);
  return probabilityInsideCircle({ north: alongM, east: acrossM }, { nn, ne, ee }, limitM);
}

/** Bounds this close to certainty are as good as the probability itself. */
const CERTAIN = 0.999;
/** standard deviations between an offset and its limit beyond which nothing is left to add up */
const FAR = 7;

/**
 * The same for several offsets that must keep their limits together, where that is plain without trials.
 *
 * The probability that all keep their limits lies between 1 less the sum of the single probabilities of failing, and the smallest
 * single one. Where that settles it, the bound is given; else undefined, and trials have to tell.
 *
 * Frame: along and across of the forms. Source: rule E5; Boole's inequality.
 */
export function jointOffsetUncertainty(
  axis: UncertainAxis,
  measured: Measured,
): ValueUncertainty | undefined {
  const { forms } = measured;
  if (forms === undefined) return undefined;
  let failing = 0;
  let smallest = 1;
  let standardM = Number.NaN;
  for (const form of forms) {
    const own = spreadOf(axis, form);
    const length = lengthOf(form);
    if (form.atDepthM === measured.atDepthM && length === measured.value) standardM = own.standardM;
    const { alongAlong, acrossAcross } = own.covariance;
    if (form.limitM - length > FAR * Math.sqrt(alongAlong + acrossAcross)) continue;
    const probability = probabilityOf(form, own.covariance);
    failing += 1 - probability;
    smallest = Math.min(smallest, probability);
  }
  const settled = 1 - failing >= CERTAIN ? 1 - failing : smallest <= 1 - CERTAIN ? smallest : undefined;
  if (settled === undefined || !Number.isFinite(standardM)) return undefined;
  return { standardUncertainty: standardM, probabilityWithin: settled };
}

const lengthOf = ({ component, alongM, acrossM }: OffsetForm): number => {
  if (component === "along") return Math.abs(alongM);
  return component === "across" ? Math.abs(acrossM) : Math.hypot(alongM, acrossM);
};
