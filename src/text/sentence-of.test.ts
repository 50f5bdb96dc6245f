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

test("numbers carry no digits that nobody can read, and lose none that count", () => {
  const written = (value: number) => sentenceOf({ code: "no.such-code", values: { value } });
  expect(written(12.998049707456119)).toBe("no.such-code, value 12.998");
  expect(written(531234.567)).toBe("no.such-code, value 531234.567");
  expect(written(20113)).toBe("no.such-code, value 20113");
  expect(written(0.000012345678)).toBe("no.such-code, value 0.00001235");
});
