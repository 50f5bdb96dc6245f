import type { Choice, Criterion, Parameter, TableParameter } from "./criterion.ts";
import { stepColumns } from "./steps.ts";

const length = (key: string, max: number, en: string, de: string): Parameter => ({
  key,
  unit: "m",
  min: 0,
  max,
  required: false,
  text: { en, de },
});
const growth: Parameter = {
  key: "growth_m_per_m",
  unit: "m/m",
  min: 0,
  max: 1,
  required: false,
  text: { en: "growth of the allowance per metre of depth", de: "Zuwachs der Toleranz je Meter Tiefe" },
};

export const parameters: readonly Parameter[] = [
  length("limit_m", 10, "allowed offset in any direction", "zulässige Abweichung in jeder Richtung"),
  {
    key: "limit_per_diameter",
    unit: "1",
    min: 0,
    max: 2,
    required: false,
    text: {
      en: "allowed offset as a part of the diameter (of the width of a rectangle)",
      de: "zulässige Abweichung als Teil des Durchmessers (der Breite bei Rechtecken)",
    },
  },
  length("limit_along_m", 10, "allowed offset along", "zulässige Abweichung längs"),
  length("limit_across_m", 10, "allowed offset across", "zulässige Abweichung quer"),
  growth,
  {
    key: "at_level_m",
    unit: "m",
    min: -12_000,
    max: 9000,
    required: false,
    text: { en: "level at which the position is looked at", de: "Höhe, in der die Lage geprüft wird" },
  },
  {
    key: "along_bearing_deg",
    unit: "deg",
    min: -360,
    max: 360,
    required: false,
    text: {
      en: "bearing of along, if it is not that of the element",
      de: "Richtung längs, falls nicht die des Elements",
    },
  },
];

export const choices: readonly Choice[] = [
  {
    key: "at",
    values: ["cutoff", "head", "toe", "every-level"],
    text: { en: "where the position is looked at", de: "wo die Lage geprüft wird" },
  },
  {
    key: "combine",
    values: ["min", "max"],
    text: {
      en: "which counts of the constant and the part of the diameter",
      de: "was von festem Wert und Durchmesseranteil gilt",
    },
  },
  {
    key: "growth_from",
    values: ["head", "cutoff"],
    text: { en: "level from which the allowance grows", de: "Höhe, ab der die Toleranz wächst" },
  },
  {
    key: "from",
    values: ["design", "as-built-top", "own-line"],
    text: {
      en: "line from which the offset is counted",
      de: "Linie, von der die Abweichung gezählt wird",
    },
  },
];

export const tables: readonly TableParameter[] = [
  {
    key: "steps",
    columns: [
      ...stepColumns,
      length("limit_m", 10, "allowed offset", "zulässige Abweichung"),
      {
        key: "per_diameter",
        unit: "1",
        min: 0,
        max: 2,
        required: false,
        text: { en: "part of the diameter", de: "Teil des Durchmessers" },
      },
      length("at_least_m", 10, "never less than", "mindestens"),
      length("at_most_m", 10, "never more than", "höchstens"),
      growth,
    ],
    text: { en: "allowed offset in steps", de: "zulässige Abweichung in Stufen" },
  },
];

export const text: Criterion["text"] = {
  en: {
    title: "Plan position",
    explanation:
      "Offset of the as-built axis from the design axis, square to it, held against the allowance at that level.",
  },
  de: {
    title: "Lage",
    explanation:
      "Abweichung der gebauten Achse von der Sollachse, rechtwinklig zu ihr, gegen die Toleranz in dieser Höhe.",
  },
};
