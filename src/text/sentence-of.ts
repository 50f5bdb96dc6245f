import type { Issue } from "#core";
import { fillIn } from "./figure-words.ts";
import { criteriaSentences } from "./findings/criteria.ts";
import { formatsSentences } from "./findings/formats.ts";
import { geodesySentences } from "./findings/geodesy.ts";
import { recordsSentences } from "./findings/records.ts";
import type { Sentences } from "./findings/sentences.ts";
import { simulatorSentences } from "./findings/simulator.ts";
import { storeSentences } from "./findings/store.ts";
import { surveySentences } from "./findings/survey.ts";

const catalogue: Sentences = {
  ...formatsSentences,
  ...geodesySentences,
  ...surveySentences,
  ...criteriaSentences,
  ...simulatorSentences,
  ...recordsSentences,
  ...storeSentences,
};

/** Codes that have a sentence; a test holds them against the codes that the program uses. */
export const sentenceCodes: readonly string[] = Object.keys(catalogue);

/** The sentence for a finding or for the reason of a verdict, in English. A code without a sentence shows itself and its values. */
export function sentenceOf(finding: Pick<Issue, "code" | "values">): string {
  const template = catalogue[finding.code];
  if (template === undefined) {
    const values = Object.entries(finding.values).map(([name, value]) => `${name} ${readable(value)}`);
    return [finding.code, ...values].join(", ");
  }
  const written = Object.entries(finding.values).map(([name, value]) => [name, readable(value)]);
  return fillIn(template, Object.fromEntries(written));
}

/** A number of a finding as people read it: four decimals, or four digits where it is smaller than that shows; whole numbers stay whole. */
function readable(value: string | number): string | number {
  if (typeof value !== "number" || !Number.isFinite(value)) return value;
  return Math.abs(value) < 0.1 ? Number(value.toPrecision(4)) : Math.round(value * 1e4) / 1e4;
}
