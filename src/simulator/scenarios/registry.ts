import type { Scenario } from "../scenario.ts";
import { exampleSite } from "./example-site/example-site.ts";
import { plainScenario } from "./plain.ts";

/** A size that a scenario may be given: a whole number or a length. */
export interface ScenarioParameter {
  readonly key: string;
  readonly unit: "1" | "m";
  readonly min: number;
  readonly max: number;
  readonly otherwise: number;
  readonly text: string;
}

/** A scenario that goes by a name. The scenario declares, everything else asks the declaration. */
export interface NamedScenario {
  readonly id: string;
  readonly text: string;
  readonly parameters: readonly ScenarioParameter[];
  /** @param numbers values of all parameters, checked. */
  make(numbers: Readonly<Record<string, number>>, seed: number | string): Scenario;
}

const sizes = (elements: number, stations: number, intervalM: number): readonly ScenarioParameter[] => [
  { key: "elements", unit: "1", min: 1, max: 20_000, otherwise: elements, text: "number of elements" },
  { key: "stations", unit: "1", min: 2, max: 2000, otherwise: stations, text: "stations of each run" },
  {
    key: "interval_m",
    unit: "m",
    min: 0.1,
    max: 10,
    otherwise: intervalM,
    text: "metres from station to station",
  },
];

const plain = (numbers: Readonly<Record<string, number>>, name: string, seed: number | string): Scenario =>
  plainScenario(
    name,
    {
      elements: numbers["elements"] ?? Number.NaN,
      stations: numbers["stations"] ?? Number.NaN,
      intervalM: numbers["interval_m"] ?? Number.NaN,
    },
    seed,
  );

export const namedScenarios: readonly NamedScenario[] = [
  {
    id: "example-site",
    text: "an invented site with a shaft, a pier, raked micropiles, freeze holes and wall panels",
    parameters: [],
    make: (_, seed) => exampleSite(seed),
  },
  {
    id: "plain",
    text: "plumb bored piles, one run down each",
    parameters: sizes(12, 31, 1),
    make: (numbers, seed) => plain(numbers, "Plain job (invented)", seed),
  },
  {
    id: "large",
    text: "a large job of plumb bored piles",
    parameters: sizes(2000, 60, 0.5),
    make: (numbers, seed) => plain(numbers, "Large job (invented)", seed),
  },
];
