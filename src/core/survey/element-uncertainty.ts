import type { CriterionRequest } from "../criteria/criterion.ts";
import { isMeasured, type ValueUncertainty } from "../criteria/decide.ts";
import { criterion } from "../criteria/registry.ts";
import { designAxes } from "../elements/design-axis.ts";
import { type BudgetEntry, budgetEntry, USUAL_SITE_WORK } from "../uncertainty/budget.ts";
import { coverageCircle } from "../uncertainty/coverage-circle.ts";
import { errorEllipse } from "../uncertainty/error-ellipse.ts";
import type { ElementAxis, ElementWork } from "./axis-of-element.ts";
import type { AxisRow, ElementUncertaintyResult, SourceShare } from "./results.ts";
import { TrialSeries } from "./trial-series.ts";
import type { TrialOptions } from "./trials.ts";
import { covarianceOf, effectsOf, type UncertainAxis } from "./uncertain-axis.ts";
import {
  jointOffsetUncertainty,
  type OffsetCovariance,
  offsetCovariance,
  offsetUncertainty,
} from "./value-uncertainty.ts";

/** Standard place of an access tube in its element, each horizontal axis, metres: common practice, no source. */
const USUAL_TUBE_POSITION_M = 0.01;

/** Semi-axis of the ellipse that holds the true point in plan with 95 %: sqrt(-2 ln 0.05). */
const COVERAGE_95_PLAN = Math.sqrt(-2 * Math.log(0.05));

/** What is known of the uncertainty of one element's axis, worked out when asked for. */
export class ElementUncertainty {
  readonly #found: ElementAxis;
  readonly #axis: UncertainAxis;
  readonly #series: TrialSeries;
  readonly #trials: TrialOptions;

  constructor(work: ElementWork, found: ElementAxis, trials: TrialOptions) {
    const tubeStandardM = tubePosition(found);
    this.#found = found;
    this.#trials = trials;
    this.#axis = {
      path: found.axis.path,
      parts: found.shares.flatMap(({ worked: { uncertainty }, share }) =>
        uncertainty === undefined ? [] : [{ uncertainty, share }],
      ),
      tubes: tubesOf(found, tubeStandardM),
    };
    this.#series = new TrialSeries(work, tubeStandardM, trials);
  }

  /** Standard uncertainty and probability for one rule: exact for an offset at one place, else by trials. */
  ofValue(request: CriterionRequest): ValueUncertainty | undefined {
    const measured = criterion(request.kind)?.measure(this.#found.axis, request);
    if (measured === undefined || !isMeasured(measured)) return undefined;
    if (this.#trials.trials === undefined) {
      const exact = offsetUncertainty(this.#axis, measured) ?? jointOffsetUncertainty(this.#axis, measured);
      if (exact !== undefined) return exact;
    }
    return this.#series.ofValue(request);
  }

  result(rows: readonly AxisRow[]): ElementUncertaintyResult {
    const axes = designAxes(this.#found.axis.element);
    const planes = rows.map((row) =>
      offsetCovariance(this.#axis, { fromDepthM: undefined, atDepthM: row.depthM, axes }),
    );
    const worst = rows.reduce((best, row, i) => (row.offsetM > rows[best]!.offsetM ? i : best), 0);
    const last = rows.length - 1;
    return {
      covariances: rows.map((row) => covarianceOf(effectsOf(this.#axis, row.depthM))),
      ellipses: planes.map(({ alongAlong, alongAcross, acrossAcross }) => {
        const { semiMajor, semiMinor, majorAzimuth } = errorEllipse({
          nn: alongAlong,
          ne: alongAcross,
          ee: acrossAcross,
        });
        return {
          u95M: coverageCircle(semiMajor, semiMinor, 0.95),
          semiMajor95M: COVERAGE_95_PLAN * semiMajor,
          semiMinor95M: COVERAGE_95_PLAN * semiMinor,
          majorFromAlongRad: majorAzimuth,
        };
      }),
      budget: [
        { place: "toe", atDownM: rows[last]?.downM ?? Number.NaN, shares: sharesOf(planes[last]) },
        { place: "worst", atDownM: rows[worst]?.downM ?? Number.NaN, shares: sharesOf(planes[worst]) },
      ],
      sources: this.#sources(),
      trials: this.#series.summary(),
    };
  }

  /** Each source once; the place of the tube is a matter of the element and has its usual value where no run gives one. */
  #sources(): readonly BudgetEntry[] {
    const ofRuns = this.#axis.parts.flatMap(({ uncertainty }) => [...uncertainty.budget.values()]);
    const tube = this.#axis.tubes[0];
    const all =
      tube === undefined
        ? ofRuns
        : [...ofRuns, budgetEntry("tube-position", tube.standardM, USUAL_SITE_WORK)];
    return all.filter((entry, i) => all.findIndex((each) => each.source === entry.source) === i);
  }
}

function tubePosition({ axis, shares }: ElementAxis): number {
  if (axis.tubes.length === 0) return 0;
  const declared = shares.flatMap(({ worked }) => worked.uncertainty?.budget.get("tube-position") ?? []);
  return declared[0]?.value ?? USUAL_TUBE_POSITION_M;
}

/** Each surveyed tube's place in the element counts by its share in the axis. */
function tubesOf(found: ElementAxis, standardM: number): UncertainAxis["tubes"] {
  if (standardM === 0) return [];
  const share = 1 / Math.max(found.axis.tubes.length, 1);
  return found.axis.tubes.map(() => ({ standardM, share }));
}

/** Share of each source in the variance of the offset (along and across together), largest first. */
function sharesOf(plane: OffsetCovariance | undefined): readonly SourceShare[] {
  if (plane === undefined) return [];
  const whole = plane.alongAlong + plane.acrossAcross;
  return [...plane.bySource]
    .map(([source, variance]) => ({
      source,
      standardM: Math.sqrt(variance),
      share: whole > 0 ? variance / whole : 0,
    }))
    .sort((a, b) => b.share - a.share);
}
