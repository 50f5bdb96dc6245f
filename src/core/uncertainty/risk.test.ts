import { describe, expect, test } from "vitest";
import published from "../../../test/published/jcgm-106/case.json" with { type: "json" };
import { normalCdf, normalQuantile } from "../num/normal.ts";
import { ContractError } from "../result.ts";
import { decisionRisk, gammaPopulation, guardBand, normalPopulation, testUncertaintyRatio } from "./risk.ts";

const about = (centre: number, half: number) => ({ lower: centre - half, upper: centre + half });

describe("decisionRisk", () => {
  const { resistors, bearings } = published;

  test.each(resistors.rules)("resistors of JCGM 106, accepted within $acceptanceHalfWidth ohm", (rule) => {
    const population = normalPopulation(resistors.mean, resistors.standardDeviation);
    const found = decisionRisk(
      population,
      resistors.standardUncertainty,
      about(resistors.mean, resistors.toleranceHalfWidth),
      about(resistors.mean, rule.acceptanceHalfWidth),
    );
    expect(Math.abs(found.conforming - resistors.conforming)).toBeLessThan(5.1e-6);
    expect(Math.abs(found.consumer - rule.consumer)).toBeLessThan(5.1e-7);
    expect(Math.abs(found.producer - rule.producer)).toBeLessThan(5.1e-7);
  });

  test.each(bearings.rules)("ball bearings of JCGM 106, accepted below $acceptance um", (rule) => {
    const found = decisionRisk(
      gammaPopulation(bearings.shape, bearings.scale),
      bearings.standardUncertainty,
      { upper: bearings.tolerance },
      { upper: rule.acceptance },
    );
    expect(Math.abs(1 - found.conforming - bearings.outside)).toBeLessThan(5.1e-9);
    expect(Math.abs(found.consumer - rule.consumer)).toBeLessThan(5.1e-9);
    expect(Math.abs(found.producer - rule.producer)).toBeLessThan(5.1e-7);
  });

  test.each(published.quarterSpread)(
    "a quarter of the population's spread, $inTolerance in tolerance",
    (row) => {
      const spread = 1 / normalQuantile((1 + row.inTolerance) / 2);
      const found = decisionRisk(normalPopulation(0, spread), spread / 4, about(0, 1), about(0, 1));
      expect(Math.abs(100 * found.consumer - row.falseAcceptPercent)).toBeLessThan(2e-6);
      expect(Math.abs((100 * found.consumer) / found.accepted - row.conditionalPercent)).toBeLessThan(2e-6);
    },
  );

  test("process spread 4, measurement 1, limits 8", () => {
    const { limit, falseAccept, falseReject } = published.processFourTestOne;
    const found = decisionRisk(normalPopulation(0, 4), 1, about(0, limit), about(0, limit));
    expect(Number(found.consumer.toFixed(3))).toBe(falseAccept);
    expect(Number(found.producer.toFixed(3))).toBe(falseReject);
  });

  test("accepted, rejected, good and bad add up; a guard band moves risk from consumer to producer", () => {
    const population = normalPopulation(1, 2);
    let previous = decisionRisk(population, 0.5, { upper: 3 }, { upper: 3 });
    for (const limit of [2.5, 2, 1]) {
      const found = decisionRisk(population, 0.5, { upper: 3 }, { upper: limit });
      expect(found.consumer).toBeLessThan(previous.consumer);
      expect(found.producer).toBeGreaterThan(previous.producer);
      expect(found.accepted).toBeCloseTo(normalCdf((limit - 1) / Math.hypot(2, 0.5)), 10);
      expect(found.conforming).toBeCloseTo(normalCdf(1), 10);
      previous = found;
    }
  });

  test("throws ContractError for an uncertainty or a spread that is not positive", () => {
    expect(() => decisionRisk(normalPopulation(0, 1), 0, {}, {})).toThrow(ContractError);
    expect(() => normalPopulation(0, 0)).toThrow(ContractError);
    expect(() => gammaPopulation(4, -1)).toThrow(ContractError);
  });
});

describe("guardBand and testUncertaintyRatio", () => {
  test.each(published.guardFactors)("factor for $probability", ({ probability, factor }) => {
    expect(Math.abs(guardBand(10, probability) - 10 * factor)).toBeLessThan(5.1e-4);
  });

  test("ratio of half the tolerance to the expanded uncertainty", () => {
    expect(testUncertaintyRatio(75, 10)).toBe(3.75);
    expect(() => testUncertaintyRatio(75, 0)).toThrow(ContractError);
    expect(() => guardBand(1, 1)).toThrow(ContractError);
    expect(() => guardBand(-1, 0.9)).toThrow(ContractError);
  });
});
