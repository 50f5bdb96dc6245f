import type { Language, StepReport } from "#core";
import { formatNumber, formatQuantity } from "#text";
import { pathWords } from "../../words/path/words.ts";
import type { reviewWords } from "../../words/review/words.ts";
import type { Words } from "../../words/use-words.ts";

export type PathWord = Words<keyof (typeof pathWords)["en"]>;
type Key = keyof (typeof pathWords)["en"];

/** What the steps of the computation are called. */
export const STEP_NAMES: Readonly<Record<string, keyof (typeof reviewWords)["en"]>> = {
  depth: "stepDepth",
  accelerometer: "stepAccelerometer",
  "tilt-zero": "stepTiltZero",
  north: "stepNorth",
  "gyro-zero": "stepGyroZero",
  "gyro-scale": "stepGyroScale",
  heading: "stepHeading",
  "heading-closure": "stepClosure",
  "two-face": "stepTwoFace",
  "combine-passes": "stepCombine",
  path: "stepPath",
  spiral: "stepSpiral",
  stretch: "stepStretch",
};

const isKey = (key: string): key is Key => Object.hasOwn(pathWords.en, key);

/** What a step did, as one line of words and numbers with their units. */
export const effectText = ({ effect }: StepReport, word: PathWord, language: Language): string =>
  Object.entries(effect)
    .flatMap(([name, value]) => {
      const key = `effect_${name}`;
      const text = valueText(name, value, word, language);
      return isKey(key) ? [word(key, { value: text })] : [`${name} ${text}`];
    })
    .join(" · ");

function valueText(name: string, value: number | string, word: PathWord, language: Language): string {
  if (typeof value === "string") {
    const key = [`method-${value}`, `closure-${value}`, `value_${value}`].find(isKey);
    return key === undefined ? value : word(key);
  }
  if (name.endsWith("_deg_per_h")) return formatQuantity(value, "deg/h", language);
  if (name.endsWith("_deg")) return formatQuantity(value, "deg", language, { decimals: 3 });
  if (name.endsWith("_m_per_count")) return formatQuantity(value, "m", language, { decimals: 6 });
  if (name.endsWith("_m")) return formatQuantity(value, "m", language);
  if (Number.isInteger(value)) return formatNumber(value, 0, language);
  return formatNumber(value, 6, language);
}
