import { readdirSync } from "node:fs";
import { join } from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, test } from "vitest";
import type { Texts } from "./catalogue.ts";

const areas = readdirSync(import.meta.dirname, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

const read = async (area: string, language: string): Promise<Texts> => {
  const module = (await import(join(import.meta.dirname, area, `${language}.ts`))) as Record<string, Texts>;
  return module[language]!;
};

/** The places a message has, each once; making the message shows that it can be read. */
function placesOf(message: string, language: string): readonly string[] {
  new IntlMessageFormat(message, language, undefined, { ignoreTag: true });
  return [...new Set([...message.matchAll(/\{(\w+)(?=[,}])/g)].map(([, name]) => name!))].sort();
}

test("there are areas", () => expect(areas.length).toBeGreaterThan(3));

describe.each(areas)("texts of %s", (area) => {
  test("have the same keys and places in English and German, and none is empty", async () => {
    const [en, de] = await Promise.all([read(area, "en"), read(area, "de")]);
    expect(Object.keys(de).sort()).toEqual(Object.keys(en).sort());
    for (const [key, english] of Object.entries(en)) {
      const german = de[key]!;
      expect(english.trim(), key).not.toBe("");
      expect(german.trim(), key).not.toBe("");
      expect(placesOf(german, "de"), key).toEqual(placesOf(english, "en"));
    }
  });

  test("hold no code words and nothing that a person would be blamed with", async () => {
    for (const language of ["en", "de"])
      for (const [key, text] of Object.entries(await read(area, language)))
        expect(text, key).not.toMatch(/\b(undefined|null|NaN|invalid|oops|sorry|ungültig)\b/i);
  });
});
