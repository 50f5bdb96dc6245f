import { expect, test } from "vitest";
import { sentenceCodes, sentenceOf } from "./sentence-of.ts";

test("a code without a sentence shows itself and its values rather than nothing", () => {
  expect(sentenceOf({ code: "no.such-code", values: { found: 3, unit: "m" } })).toBe(
    "no.such-code, found 3, unit m",
  );
});

test("every sentence is a sentence, not a code", () => {
  for (const code of sentenceCodes) {
    const sentence = sentenceOf({ code, values: {} });
    expect(sentence, code).toMatch(/^(?:[A-Z{"0-9]).*[.!?]$/su);
  }
});
