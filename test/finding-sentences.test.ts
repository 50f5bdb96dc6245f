import { readdirSync, readFileSync } from "node:fs";
import { join, resolve, sep } from "node:path";
import { expect, test } from "vitest";
import { sentenceCodes, translatedPhrases } from "#text";

const root = resolve(import.meta.dirname, "../src");

/** Sources of the program but for the sentences themselves; comments are left out, because they list codes too. */
const sources = readdirSync(root, { recursive: true, encoding: "utf8" })
  .map((file) => file.split(sep).join("/"))
  .filter((file) => file.endsWith(".ts") && !file.endsWith(".test.ts") && !file.startsWith("text/"))
  .map((file) => ({ file, code: withoutComments(readFileSync(join(root, file), "utf8")) }));

/** A finding code: words with hyphens, at least two parts with dots between them. */
const CODE = /^[a-z]+(?:-[a-z0-9]+)*(?:\.[a-z0-9]+(?:-[a-z0-9]+)*)+$/;
const FILE_NAME = /\.(?:ts|tsx|js|mjs|json|csv|xlsx|txt|md|svg|png|pdf|docx|html|zip)$/;

/** Ways in which the program names a code: `code: "…"`, `reason: "…"`, `error("…"`, `warning("…"`, `note("…"`. */
const NAMED = /(?:\b(?:code|reason)\s*:|\b(?:error|warning|note|notMeasured)\s*\()\s*"([^"]+)"/g;
const COMPUTED = /(?:\b(?:code|reason)\s*:|\.(?:error|warning|note)\s*\()\s*`/;

function withoutComments(code: string): string {
  return code.replaceAll(/\/\*[\s\S]*?\*\//g, "").replaceAll(/(^|[\s;{}(,])\/\/.*$/gm, "$1");
}

function stringsOf(code: string): string[] {
  return [...code.matchAll(/"((?:[^"\\\n]|\\.)*)"/g)].map((match) => match[1]!);
}

/** Codes that one source uses: those named as such, and every other string that begins like a known code. */
function codesOf(code: string, areas: ReadonlySet<string>): string[] {
  const named = [...code.matchAll(NAMED)].map((match) => match[1]!).filter((text) => CODE.test(text));
  const likely = stringsOf(code).filter(
    (text) => CODE.test(text) && !FILE_NAME.test(text) && areas.has(text.split(".")[0]!),
  );
  return [...new Set([...named, ...likely])];
}

const areas = new Set(sentenceCodes.map((code) => code.split(".")[0]!));

test("every finding code that the program uses has a sentence", () => {
  const known = new Set(sentenceCodes);
  const without = sources.flatMap(({ file, code }) =>
    codesOf(code, areas)
      .filter((used) => !known.has(used))
      .map((used) => `${file}: ${used}`),
  );
  expect(without).toEqual([]);
});

test("every sentence belongs to a code that the program uses", () => {
  const used = new Set(sources.flatMap(({ code }) => stringsOf(code)));
  expect(sentenceCodes.filter((code) => !used.has(code))).toEqual([]);
});

test("every phrase that has a translation is said by the program", () => {
  const said = new Set(sources.flatMap(({ code }) => stringsOf(code)));
  expect(translatedPhrases.filter((phrase) => !said.has(phrase))).toEqual([]);
});

test("no code is put together at run time, where this check could not see it", () => {
  expect(sources.filter(({ code }) => COMPUTED.test(code)).map(({ file }) => file)).toEqual([]);
});

test.each([
  ['found.error("readings.number", at)', ["readings.number"]],
  ['found.warning(\n  "readings.depth-order",\n at)', ["readings.depth-order"]],
  ['{ code: "run.no-calibration", severity: "error" }', ["run.no-calibration"]],
  ['return { reason: "path.stops-short" };', ["path.stops-short"]],
  ['const CODES = ["known.first", "known.second"];', ["known.first", "known.second"]],
  ['read("known.csv"); print("other.word")', []],
])("the check itself sees the codes in %s", (code, expected) => {
  expect(codesOf(code, new Set(["known"]))).toEqual(expected);
});

test("the check itself steps over comments, and keeps what stands beside them", () => {
  const code = 'error("a.b"); // error("c.d")\n/* code: "e.f" */\nconst place = "https://g.h";';
  expect(codesOf(withoutComments(code), areas)).toEqual(["a.b"]);
  expect(withoutComments(code)).toContain("https://g.h");
});
