import { XMLParser } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { escapeXml, fixed, tag } from "./markup.ts";
import { fitText, textWidth, wrapText } from "./text-width.ts";

describe("markup", () => {
  test("text comes back as it went in", () => {
    const content = `a < b & "c" > 'd' ]]>`;
    const parsed = new XMLParser({ ignoreAttributes: false }).parse(
      tag("x", { y: content }, escapeXml(content)),
    );
    expect(parsed.x).toEqual({ "#text": content, "@_y": content });
  });
  test("signs that XML does not allow are replaced", () => {
    expect(escapeXml("a\u0000b\u001Fc\uD800d\uFFFE")).toBe("a\uFFFDb\uFFFDc\uFFFDd\uFFFD");
  });
  test("numbers have two decimals at most and no minus zero", () => {
    expect([fixed(1.239), fixed(2), fixed(-0.001), fixed(1e-9)]).toEqual(["1.24", "2", "0", "0"]);
  });
  test("a number that is none never reaches a drawing", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) expect(() => fixed(value)).toThrow("figures");
  });
});

describe("text width", () => {
  test("widths are those of the font tables: 'A' 684 and 'i' 278 thousandths, bold 774 and 343", () => {
    expect(textWidth("Ai", 10)).toBeCloseTo(9.62, 12);
    expect(textWidth("Ai", 10, true)).toBeCloseTo(11.17, 12);
  });
  test("a text too long is cut to its room", () => {
    expect(fitText("short", 10, 100)).toBe("short");
    const cut = fitText("a text that goes on and on", 10, 60);
    expect(cut).toMatch(/^a text.*…$/);
    expect(textWidth(cut, 10)).toBeLessThanOrEqual(60);
  });
  test("wrapped lines fit and lose no word", () => {
    const content = "the quick brown fox jumps over the lazy dog and goes on";
    const lines = wrapText(content, 10, 90);
    expect(lines.join(" ")).toBe(content);
    for (const one of lines) expect(textWidth(one, 10)).toBeLessThanOrEqual(90);
  });
  test("no text gives no line", () => {
    expect(wrapText("  ", 10, 90)).toEqual([]);
  });
});
