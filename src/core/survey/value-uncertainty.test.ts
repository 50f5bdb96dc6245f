import { describe, expect, test } from "vitest";
import { element, pathOf } from "../../../test/fixtures/judged-axis.ts";
import type { Measured, OffsetForm } from "../criteria/criterion.ts";
import { designAxes } from "../elements/design-axis.ts";
import { ned } from "../geometry/vector.ts";
import type { RunUncertainty } from "./propagate-run.ts";
import type { UncertainAxis } from "./uncertain-axis.ts";
import { offsetCovariance, offsetUncertainty } from "./value-uncertainty.ts";

const axes = designAxes(element());

/** An axis of two stations 10 m apart whose lower one may move by given effects; the direction is the same all along. */
function axisWith(effects: readonly (readonly [number, number, number])[], lean = 0): UncertainAxis {
  const tangent = ned(Math.sin(lean), 0, Math.cos(lean));
  const lower = ned(10 * tangent.north, 0, 10 * tangent.down);
  const path = pathOf([ned(0, 0, 0), lower], [0, 10], [tangent, tangent]);
  const none = () => new Float64Array(2);
  const uncertainty: RunUncertainty = {
    path,
    budget: new Map(),
    shared: effects.map(([north, east, down], i) => ({
      source: "tilt-zero-x",
      key: `effect ${i}`,
      tie: undefined,
      north: Float64Array.of(0, north),
      east: Float64Array.of(0, east),
      down: Float64Array.of(0, down),
    })),
    stops: {
      tangent: [],
      depthM: none(),
      walk: undefined,
      carriedTop: false,
      hidden: { north: none(), east: none(), down: none() },
    },
    kept: [],
  };
  return { path, parts: [{ uncertainty, share: 1 }], tubes: [] };
}

const form = (changes: Partial<OffsetForm> = {}): OffsetForm => ({
  fromDepthM: undefined,
  atDepthM: 10,
  axes,
  alongM: 0,
  acrossM: 0,
  component: "both",
  limitM: 0.1,
  ...changes,
});
const measured = (own: OffsetForm, limit = own.limitM): Measured =>
  ({ value: Math.hypot(own.alongM, own.acrossM), limit, form: own }) as unknown as Measured;

describe("[E5] uncertainty of an offset", () => {
  test("in the middle: the circle holds 1 - exp(-R^2 / 2 s^2), and the larger axis of the ellipse speaks", () => {
    const round = offsetUncertainty(
      axisWith([
        [0.05, 0, 0],
        [0, 0.05, 0],
      ]),
      measured(form()),
    )!;
    expect(round.probabilityWithin).toBeCloseTo(1 - Math.exp(-2), 9);
    expect(round.standardUncertainty).toBeCloseTo(0.05, 12);
    // all the uncertainty on the diagonal: its axis is root 2 times what either component shows
    const slanted = offsetUncertainty(axisWith([[0.03, 0.03, 0]]), measured(form()))!;
    expect(slanted.standardUncertainty).toBeCloseTo(0.03 * Math.SQRT2, 12);
  });

  test("away from it: the part towards the offset; a lean counts over the length", () => {
    const axis = axisWith([
      [0.03, 0, 0],
      [0, 0.04, 0],
    ]);
    const along = form({ alongM: 0.06, component: "both" });
    expect(offsetUncertainty(axis, measured(along))!.standardUncertainty).toBeCloseTo(
      Math.sqrt(offsetCovariance(axis, along).alongAlong),
      12,
    );
    expect(offsetUncertainty(axis, measured(along, 0.01))!.standardUncertainty).toBeCloseTo(
      Math.sqrt(offsetCovariance(axis, along).alongAlong) / 10,
      12,
    );
  });

  test("on a limit of one component half is within; without uncertainty it is all or nothing", () => {
    const axis = axisWith([
      [0.01, 0, 0],
      [0, 0.01, 0],
    ]);
    const onLimit = measured(form({ alongM: 0.1, component: "along" }));
    expect(offsetUncertainty(axis, onLimit)!.probabilityWithin).toBeCloseTo(0.5, 9);
    const sure = axisWith([]);
    expect(offsetUncertainty(sure, measured(form({ alongM: 0.05 })))).toEqual({
      standardUncertainty: 0,
      probabilityWithin: 1,
    });
    expect(offsetUncertainty(sure, measured(form({ alongM: 0.2 })))!.probabilityWithin).toBe(0);
    expect(offsetUncertainty(sure, measured(form()))).toEqual({
      standardUncertainty: 0,
      probabilityWithin: 1,
    });
  });

  test("[F1] an error along the hole counts by the lean only, where the hole passes the level", () => {
    const lean = 0.1;
    const along = [Math.sin(lean) * 0.05, 0, Math.cos(lean) * 0.05] as const;
    const { alongAlong, acrossAcross } = offsetCovariance(axisWith([along], lean), form());
    expect(alongAlong + acrossAcross).toBeLessThan(1e-20);
    const deep = offsetCovariance(axisWith([[0, 0, 0.05]], lean), form());
    expect(Math.sqrt(deep.alongAlong + deep.acrossAcross)).toBeCloseTo(0.05 * Math.tan(lean), 12);
  });

  test("a missing effect leaves no number that could pass for one", () => {
    const found = offsetUncertainty(axisWith([[Number.NaN, 0, 0]]), measured(form({ alongM: 0.05 })))!;
    expect(found.standardUncertainty).toBeNaN();
    expect(found.probabilityWithin).toBeNaN();
  });
});
