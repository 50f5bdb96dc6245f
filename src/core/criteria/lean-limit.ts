import type { Parameter } from "./criterion.ts";
import type { Row } from "./steps.ts";

/** Ways to write a lean; a request gives one of them. */
const LIMIT_PARAMETERS = [
  {
    key: "ratio",
    unit: "m/m",
    min: 0,
    max: 10,
    required: false,
    text: { en: "allowed lean", de: "zulässige Neigung" },
    toRatio: (value: number) => value,
  },
  {
    key: "one_in",
    unit: "1",
    min: 0.1,
    max: 100_000,
    required: false,
    text: { en: "allowed lean as 1 in n", de: "zulässige Neigung als 1 zu n" },
    toRatio: (value: number) => 1 / value,
  },
  {
    key: "percent",
    unit: "%",
    min: 0,
    max: 1000,
    required: false,
    text: { en: "allowed lean in percent", de: "zulässige Neigung in Prozent" },
    toRatio: (value: number) => value / 100,
  },
  {
    key: "mm_per_m",
    unit: "mm/m",
    min: 0,
    max: 10_000,
    required: false,
    text: { en: "allowed lean in mm per metre", de: "zulässige Neigung in mm je Meter" },
    toRatio: (value: number) => value / 1000,
  },
] as const;
/** Keys of the ways to write a lean; a request or a row gives one of them. */
export const LEAN_KEYS: readonly string[] = LIMIT_PARAMETERS.map(({ key }) => key);

/** The ways to write a lean, as parameters. */
export const leanParameters: readonly Parameter[] = LIMIT_PARAMETERS.map(
  ({ toRatio: _, ...parameter }) => parameter,
);

/** The lean that a set of numbers allows, m/m, in whichever way it is written; undefined where it is not. */
export function ratioFrom(numbers: Row): number | undefined {
  const used = LIMIT_PARAMETERS.find(({ key }) => numbers[key] !== undefined);
  return used?.toRatio(numbers[used.key] ?? Number.NaN);
}
