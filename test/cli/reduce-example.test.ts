import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  buildToeline,
  example,
  type Ran,
  repository,
  runNode,
  temporaryFolder,
  toeline,
} from "./run-toeline.ts";

interface Results {
  readonly format: string;
  readonly runs: readonly {
    readonly id: string;
    readonly method: string;
    readonly stations: readonly { readonly easting_m: number }[];
  }[];
  readonly elements: readonly {
    readonly id: string;
    readonly axis: readonly unknown[];
    readonly verdicts: readonly { readonly verdict: string }[];
  }[];
  readonly summary: Readonly<Record<string, number>>;
}

const folder = temporaryFolder();
afterAll(folder.remove);
const out = join(folder.path, "results");
const elementIds = readFileSync(join(example, "elements.csv"), "utf8")
  .split(/\r?\n/)
  .slice(1)
  .filter((line) => line !== "")
  .map((line) => line.split(/[,;\t]/)[0]!);
const [first, second] = elementIds as [string, string];

/** The whole job once; the other tests need only a few elements of it. */
let whole: Ran;
let results: Results;
beforeAll(() => {
  buildToeline();
  whole = toeline(["reduce", example, "--out", out]);
  results = JSON.parse(readFileSync(join(out, "results.json"), "utf8")) as Results;
}, 300_000);

const someJson = (...args: readonly string[]): Results =>
  JSON.parse(toeline(["reduce", example, "--json", "--only", first, second, ...args]).stdout) as Results;

describe("the example job", () => {
  test("has one line an element, with the verdict in words, and the count below", () => {
    expect(whole.code).toBeLessThan(2);
    const lines = whole.stdout.split("\n");
    for (const id of elementIds) {
      const line = lines.find((one) => one.startsWith(`${id} `));
      expect(line, id).toMatch(/Within|Too close to call|Outside|Not judged/);
    }
    expect(whole.stdout).toMatch(new RegExp(`^${elementIds.length} elements: \\d+ within, `, "m"));
    // no colour where nobody looks
    expect(whole.stdout).not.toContain("\u001b");
  });

  test("is written whole, with tables and drawings of what was read", () => {
    expect(readdirSync(out).sort()).toEqual([
      "figures",
      "findings.txt",
      "results.json",
      "tables",
      "written-by-toeline.txt",
    ]);
    expect(results.format).toBe("toeline-results/1");
    expect(results.elements.map((element) => element.id).sort()).toEqual([...elementIds].sort());
    expect(results.runs.length).toBeGreaterThan(50);
    const words = ["not-judged", "outside", "too-close-to-call", "within"];
    expect(Object.keys(results.summary).sort()).toEqual(words);
    for (const element of results.elements) {
      for (const { verdict } of element.verdicts) expect(words).toContain(verdict);
      const drawn = element.axis.length > 0;
      expect(existsSync(join(out, `figures/${element.id}-plan.svg`)), element.id).toBe(drawn);
      expect(existsSync(join(out, `figures/${element.id}-section.svg`)), element.id).toBe(drawn);
      if (!drawn) continue;
      const table = readFileSync(join(out, `tables/${element.id}-axis.csv`), "utf8")
        .trimEnd()
        .split("\n");
      expect(table[0]).toContain("offset_m");
      expect(table.length - 1).toBe(element.axis.length);
    }
  });

  test("is written over itself, but never over somebody else's files", () => {
    const again = join(folder.path, "again");
    const write = () => toeline(["reduce", example, "--only", first, "--out", again]);
    expect(write().code).toBe(0);
    expect(write().code).toBe(0);
    writeFileSync(join(again, "notes.txt"), "mine");
    const refused = write();
    expect(refused.code).toBe(2);
    expect(refused.stderr).toContain("notes.txt");
    expect(readFileSync(join(again, "notes.txt"), "utf8")).toBe("mine");
  });

  test("as JSON is JSON and nothing else, and says of an element what the whole job says of it", () => {
    const ran = toeline(["reduce", example, "--json", "--only", first]);
    expect(ran.stderr).toBe("");
    const [element] = (JSON.parse(ran.stdout) as Results).elements;
    expect(element).toEqual(results.elements.find(({ id }) => id === first));
  });

  test("is worked out for some elements only; an unknown one is named with the one that is near", () => {
    expect(someJson().elements.map((element) => element.id)).toEqual([first, second]);
    const wrong = toeline(["reduce", example, "--only", `${first}x`]);
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain(`is ${first} meant?`);
  });

  test("by another method gives other coordinates and says so in every run", () => {
    const other = someJson("--method", "tangential");
    expect(new Set(results.runs.map((run) => run.method))).toEqual(new Set(["minimum-curvature"]));
    expect(new Set(other.runs.map((run) => run.method))).toEqual(new Set(["tangential"]));
    const [a, b] = [someJson(), other].map((one) => one.runs[0]?.stations.at(-1)?.easting_m);
    expect(a).toBeTypeOf("number");
    expect(a).not.toBe(b);
  });

  test("with --verbose shows the steps of every run", () => {
    const ran = toeline(["reduce", example, "--verbose", "--only", first]);
    expect(ran.stdout).toMatch(/^Run .*: element /m);
    expect(ran.stdout).toMatch(/heading-closure +model .*misclosure -?[\d.]+ deg/);
  });

  test("is checked from where the user stands, through the checkout's own script", () => {
    const script = join(repository, "scripts/toeline.mjs");
    const here = { INIT_CWD: join(repository, "examples") };
    const ran = runNode([script, "check", "shaft-and-pier"], repository, here);
    expect(ran.stderr).toBe("");
    const lines = ran.stdout.trimEnd().split("\n");
    const last = lines.at(-1)!;
    expect(last).toMatch(/\d+ elements, \d+ runs; (no findings|\d+ (error|warning|note))/);
    expect(lines.some((line) => /^(Error|Warning|Note) /.test(line))).toBe(!last.includes("no findings"));
    expect(ran.code).toBe(/\d+ errors?/.test(last) ? 1 : 0);
  });
});
