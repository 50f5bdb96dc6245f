import { expect, test } from "vitest";
import { englishSentences } from "./findings/english-sentences.ts";
import { germanSentences } from "./findings/german-sentences.ts";
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

test("German has a sentence for every code, and each names the same values", () => {
  const placeholders = (text: string) =>
    [...new Set([...text.matchAll(/\{(\w+)\}/g)].map((match) => match[1]))].sort();
  expect(Object.keys(germanSentences).sort()).toEqual(Object.keys(englishSentences).sort());
  for (const [code, english] of Object.entries(englishSentences))
    expect(placeholders(germanSentences[code]!), code).toEqual(placeholders(english));
});

test("in German numbers have a decimal comma, and the program's own words are German too", () => {
  const finding = {
    code: "formats.too-few-rows",
    values: { found: 1.25, expected: "at least 2" },
  };
  expect(sentenceOf(finding, "de")).toBe("Gefunden: 1,25 Zeilen mit Messwerten; erwartet: mindestens 2.");
  const typed = { code: "formats.cell-number", values: { found: "1.5 m", expected: "at most 62.00 m" } };
  expect(sentenceOf(typed, "de")).toContain('"1.5 m"; erwartet: höchstens 62.00 m');
});
