import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { probabilityInsideCircle } from "../uncertainty/probability-inside-circle.ts";
import { probabilityBelow } from "../uncertainty/probability-of-value.ts";
import type { Measured, Verdict } from "./criterion.ts";
import { decide, type ValueUncertainty } from "./decide.ts";
import type { Decision } from "./decision.ts";

const SIMPLE: Decision = { rule: "simple", probability: 0.95 };
const GUARDED: Decision = { rule: "guarded", probability: 0.95 };
const FOUR_WAY: Decision = { rule: "four-way", probability: 0.95 };

const measured = (value: number, limit: number): Measured => ({
  value,
  limit,
  atDownM: 0,
  atDepthM: 0,
  partial: false,
});
const withP = (probabilityWithin: number): ValueUncertainty => ({
  standardUncertainty: undefined,
  probabilityWithin,
});

/** A case of the page "Decision rules": all lengths of one case in one unit. */
interface Case {
  readonly what: string;
  readonly value: number;
  readonly limit: number;
  readonly probability: () => number;
  /** as on the page, and half a unit of its last digit */
  readonly expected: number;
  readonly within: number;
  readonly verdicts: readonly [simple: Verdict, guarded: Verdict, fourWay: Verdict];
}

/** Offset with the same standard uncertainty in all directions. */
const radial = (d: number, u: number, limit: number) => () =>
  probabilityInsideCircle({ north: d, east: 0 }, { nn: u * u, ne: 0, ee: u * u }, limit);
const unequal = (north: number, east: number, un: number, ue: number, limit: number) => () =>
  probabilityInsideCircle({ north, east }, { nn: un * un, ne: 0, ee: ue * ue }, limit);

type Row = readonly [
  what: string,
  value: number,
  limit: number,
  probability: () => number,
  expected: number,
  within: number,
  simple: Verdict,
  guarded: Verdict,
  fourWay: Verdict,
];
const caseOf = ([what, value, limit, probability, expected, within, ...verdicts]: Row): Case => ({
  what,
  value,
  limit,
  probability,
  expected,
  within,
  verdicts,
});

const CLOSE = "too-close-to-call";
/** Written to five digits on the page. */
const FIVE = 0.5e-5;

/** The acceptance radius for p = 0.95, T = 75, on its two sides: 0.01 is more than its rounding. */
const aroundRadius = (radius: number, u: number): readonly Row[] => [
  [
    `just inside the acceptance radius ${radius} for u = ${u}`,
    radius - 0.01,
    75,
    radial(radius - 0.01, u, 75),
    0.95,
    4e-4,
    "within",
    "within",
    "within",
  ],
  [
    `just outside the acceptance radius ${radius} for u = ${u}`,
    radius + 0.01,
    75,
    radial(radius + 0.01, u, 75),
    0.95,
    4e-4,
    "within",
    "outside",
    CLOSE,
  ],
];

const twenty: readonly Case[] = (
  [
    [
      "one upper limit: −5.47, u 0.05, limit −5.40",
      -5.47,
      -5.4,
      () => probabilityBelow(-5.47, 0.05, -5.4),
      0.9192,
      0.5e-4,
      "within",
      "outside",
      CLOSE,
    ],
    [
      "one lower limit, turned round: 509.7, u 8.6, limit 490",
      -509.7,
      -490,
      () => probabilityBelow(-509.7, 8.6, -490),
      0.989,
      0.5e-4,
      "within",
      "within",
      "within",
    ],
    ["radial 60, u 10", 60, 75, radial(60, 10, 75), 0.92297, FIVE, "within", "outside", CLOSE],
    ["radial 70, u 10", 70, 75, radial(70, 10, 75), 0.66669, FIVE, "within", "outside", CLOSE],
    ["radial, on the limit", 75, 75, radial(75, 10, 75), 0.47334, FIVE, "within", "outside", CLOSE],
    ["radial 80, above the limit", 80, 75, radial(80, 10, 75), 0.28613, FIVE, "outside", "outside", CLOSE],
    ["radial 50, u 15", 50, 75, radial(50, 15, 75), 0.93869, FIVE, "within", "outside", CLOSE],
    ["radial, no offset, u 25", 0, 75, radial(0, 25, 75), 0.98889, FIVE, "within", "within", "within"],
    [
      "unequal: (48, 36), u (15, 5)",
      60,
      75,
      unequal(48, 36, 15, 5, 75),
      0.874893,
      0.5e-6,
      "within",
      "outside",
      CLOSE,
    ],
    [
      "the same with u 10 both ways",
      60,
      75,
      unequal(48, 36, 10, 10, 75),
      0.922972,
      0.5e-6,
      "within",
      "outside",
      CLOSE,
    ],
    ...aroundRadius(66.599, 5),
    ...aroundRadius(57.791, 10),
    ...aroundRadius(38.36, 20),
    ...aroundRadius(8.862, 30),
    [
      "verticality over 30 m: toe 285, u 12, against 1 in 75",
      285 / 30_000,
      1 / 75,
      radial(285, 12, 400),
      1,
      0.5e-4,
      "within",
      "within",
      "within",
    ],
    [
      "the same against 1 in 100: not proven, although 285 < 300",
      285 / 30_000,
      1 / 100,
      radial(285, 12, 300),
      0.89055,
      FIVE,
      "within",
      "outside",
      CLOSE,
    ],
  ] satisfies readonly Row[]
).map(caseOf);

const oneSided = (value: number, u: number, limit: number) => () => probabilityBelow(value, u, limit);
/** A component against one limit: Phi((T - d)/u), which promises more than an offset in plan can keep. */
const components: readonly Case[] = (
  [
    ["component 60, u 10", 60, 75, oneSided(60, 10, 75), 0.93319, FIVE, "within", "outside", CLOSE],
    ["component 75, on the limit", 75, 75, oneSided(75, 10, 75), 0.5, FIVE, "within", "outside", CLOSE],
    ["component 80, u 10", 80, 75, oneSided(80, 10, 75), 0.30854, FIVE, "outside", "outside", CLOSE],
    ["component 50, u 15", 50, 75, oneSided(50, 15, 75), 0.95221, FIVE, "within", "within", "within"],
    [
      "component 285 over 30 m against 300, u 12",
      285,
      300,
      oneSided(285, 12, 300),
      0.89435,
      FIVE,
      "within",
      "outside",
      CLOSE,
    ],
    [
      "just below T + 1.6449 u: outside is not shown",
      91.439,
      75,
      oneSided(91.439, 10, 75),
      0.05,
      4e-4,
      "outside",
      "outside",
      CLOSE,
    ],
    [
      "just above T + 1.6449 u: outside is shown",
      91.459,
      75,
      oneSided(91.459, 10, 75),
      0.05,
      4e-4,
      "outside",
      "outside",
      "outside",
    ],
  ] satisfies readonly Row[]
).map(caseOf);

describe("[E5][F4] the twenty cases of docs/method/decision-rules.md", () => {
  test("are those of the page, with its probabilities and verdicts", () => {
    const page = readFileSync(new URL("../../../docs/method/decision-rules.md", import.meta.url), "utf8");
    const word = (cell: string) => cell.trim().replaceAll(" ", "-");
    const written = page.split("\n").flatMap((line) => {
      const cells = line.split("|");
      if (!/^\d+$/.test(cells[1]?.trim() ?? "")) return [];
      return [[Number.parseFloat(cells[3]!), ...cells.slice(4, 7).map(word)]];
    });
    expect(written).toHaveLength(20);
    expect(written).toEqual(twenty.map(({ expected, verdicts }) => [expected, ...verdicts]));
  });

  test.each([...twenty, ...components])("$what: P = $expected", (one) => {
    const probability = one.probability();
    expect(Math.abs(probability - one.expected)).toBeLessThanOrEqual(one.within);
    const verdicts = [SIMPLE, GUARDED, FOUR_WAY].map(
      (rule) => decide(measured(one.value, one.limit), withP(probability), rule).verdict,
    );
    expect(verdicts).toEqual(one.verdicts);
  });

  test.each([
    [66.599, 5],
    [57.791, 10],
    [38.36, 20],
    [8.862, 30],
  ])("the verdict flips within half of the last digit of the acceptance radius %f, u %f", (radius, u) => {
    const at = (d: number) => decide(measured(d, 75), withP(radial(d, u, 75)()), FOUR_WAY).verdict;
    expect([at(radius - 0.0006), at(radius + 0.0006)]).toEqual(["within", CLOSE]);
  });
});

describe("[E5] whatever the offset and its covariance", () => {
  const spread = fc.double({ min: 0.5, max: 60, noNaN: true });
  const anyCase = fc.record({
    north: fc.double({ min: -150, max: 150, noNaN: true }),
    east: fc.double({ min: -150, max: 150, noNaN: true }),
    un: spread,
    ue: spread,
    r: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
    limit: fc.double({ min: 1, max: 200, noNaN: true }),
  });
  const covariance = ({ un, ue, r }: { un: number; ue: number; r: number }) => ({
    nn: un * un,
    ne: r * un * ue,
    ee: ue * ue,
  });
  /** What the quadrature may be off by. */
  const EXACT = 1e-9;
  const share = fc.double({ min: 0, max: 1, noNaN: true });

  test("the probability never falls when the limit grows", () => {
    fc.assert(
      fc.property(anyCase, share, (one, part) => {
        const inside = (limit: number) => probabilityInsideCircle(one, covariance(one), limit);
        expect(inside(one.limit * part)).toBeLessThanOrEqual(inside(one.limit) + EXACT);
      }),
    );
  });

  test("the probability never falls when the offset shrinks towards the design", () => {
    fc.assert(
      fc.property(anyCase, share, (one, part) => {
        const inside = (scale: number) =>
          probabilityInsideCircle(
            { north: scale * one.north, east: scale * one.east },
            covariance(one),
            one.limit,
          );
        expect(inside(part)).toBeGreaterThanOrEqual(inside(1) - EXACT);
      }),
    );
  });

  test("turning the offset and its covariance together changes nothing", () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: -4, max: 4, noNaN: true }), (one, turn) => {
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        const { nn, ne, ee } = covariance(one);
        const turned = probabilityInsideCircle(
          { north: one.north * cos - one.east * sin, east: one.north * sin + one.east * cos },
          {
            nn: cos * cos * nn - 2 * cos * sin * ne + sin * sin * ee,
            ne: cos * sin * (nn - ee) + (cos * cos - sin * sin) * ne,
            ee: sin * sin * nn + 2 * cos * sin * ne + cos * cos * ee,
          },
          one.limit,
        );
        expect(Math.abs(turned - probabilityInsideCircle(one, { nn, ne, ee }, one.limit))).toBeLessThan(
          EXACT,
        );
      }),
    );
  });

  test("[F4] four-way is never within where guarded is outside, and outside only where guarded is", () => {
    const asked = fc.double({ min: 0.501, max: 0.999, noNaN: true });
    const length = fc.double({ min: 0, max: 200, noNaN: true });
    fc.assert(
      fc.property(length, length, share, asked, fc.boolean(), (value, limit, p, probability, partial) => {
        const by = (rule: Decision["rule"]) =>
          decide({ ...measured(value, limit), partial }, withP(p), { rule, probability }).verdict;
        const [guarded, fourWay] = [by("guarded"), by("four-way")];
        expect(fourWay === "within").toBe(guarded === "within");
        if (guarded === "outside") expect(fourWay).not.toBe("within");
        if (fourWay === "outside") expect(guarded).toBe("outside");
      }),
    );
  });
});
