import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildToeline, example, repository, runNode, temporaryFolder, toeline } from "./run-toeline.ts";

interface Results {
  readonly format: string;
  readonly runs: readonly {
    readonly id: string;
    readonly element: string;
    readonly stations: readonly unknown[];
  }[];
  readonly elements: readonly {
    readonly id: string;
    readonly axis: readonly unknown[];
    readonly verdicts: readonly { readonly verdict: string }[];
  }[];
  readonly summary: Readonly<Record<string, number>>;
}

beforeAll(buildToeline);
const folder = temporaryFolder();
afterAll(folder.remove);
const elementIds = readFileSync(join(example, "elements.csv"), "utf8")
  .split(/\r?\n/)
  .slice(1)
  .filter((line) => line !== "")
  .map((line) => line.split(/[,;\t]/)[0]!);

describe("the example job", () => {
  test("has one line an element, with the verdict in words, and the count below", () => {
    const ran = toeline(["reduce", example]);
    expect(ran.code).toBeLessThan(2);
    expect(ran.stderr).toBe("");
    const lines = ran.stdout.split("\n");
    for (const id of elementIds) {
      const line = lines.find((one) => one.startsWith(`${id} `));
      expect(line, id).toMatch(/Within|Too close to call|Outside|Not judged/);
    }
    expect(ran.stdout).toMatch(new RegExp(`^${elementIds.length} elements: \\d+ within, `, "m"));
    // no colour where nobody looks
    expect(ran.stdout).not.toContain("\u001b");
  });

  test("as JSON is JSON and nothing else, and holds every element", () => {
    const ran = toeline(["reduce", example, "--json"]);
    expect(ran.stderr).toBe("");
    const results = JSON.parse(ran.stdout) as Results;
    expect(results.format).toBe("toeline-results/1");
    expect(results.elements.map((element) => element.id).sort()).toEqual([...elementIds].sort());
    expect(results.runs.length).toBeGreaterThan(50);
    const verdicts = results.elements.flatMap((element) => element.verdicts.map((one) => one.verdict));
    for (const verdict of verdicts) expect(Object.keys(results.summary)).toContain(verdict);
    expect(Object.keys(results.summary).sort()).toEqual([
      "not-judged",
      "outside",
      "too-close-to-call",
      "within",
    ]);
  });

  test("is written with tables and drawings, again over itself, but never over somebody else's files", () => {
    const out = join(folder.path, "results");
    const first = toeline(["reduce", example, "--out", out]);
    expect(first.code).toBeLessThan(2);
    expect(readdirSync(out).sort()).toEqual([
      "figures",
      "findings.txt",
      "results.json",
      "tables",
      "written-by-toeline.txt",
    ]);
    const printed = toeline(["reduce", example, "--json"]).stdout;
    const written = readFileSync(join(out, "results.json"), "utf8");
    expect(JSON.parse(written)).toEqual(JSON.parse(printed));
    for (const element of (JSON.parse(written) as Results).elements) {
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
    expect(toeline(["reduce", example, "--out", out]).code).toBe(first.code);
    writeFileSync(join(out, "notes.txt"), "mine");
    const refused = toeline(["reduce", example, "--out", out]);
    expect(refused.code).toBe(2);
    expect(refused.stderr).toContain("notes.txt");
    expect(readFileSync(join(out, "notes.txt"), "utf8")).toBe("mine");
  });

  test("is worked out for some elements only; an unknown one is named with the one that is near", () => {
    const wanted = elementIds.slice(0, 2);
    const results = JSON.parse(toeline(["reduce", example, "--json", "--only", ...wanted]).stdout) as Results;
    expect(results.elements.map((element) => element.id)).toEqual(wanted);
    const wrong = toeline(["reduce", example, "--only", `${wanted[0]}x`]);
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain(`${wanted[0]}x`);
  });

  test("by another method gives other coordinates and says so in every run", () => {
    const usual = JSON.parse(toeline(["reduce", example, "--json"]).stdout) as {
      runs: { method: string; stations: { easting_m: number }[] }[];
    };
    const other = JSON.parse(
      toeline(["reduce", example, "--json", "--method", "tangential"]).stdout,
    ) as typeof usual;
    expect(new Set(usual.runs.map((run) => run.method))).toEqual(new Set(["minimum-curvature"]));
    expect(new Set(other.runs.map((run) => run.method))).toEqual(new Set(["tangential"]));
    const [a, b] = [usual, other].map(
      (one) => one.runs.find((run) => run.stations.length > 2)!.stations.at(-1)!,
    );
    expect(a!.easting_m).not.toBe(b!.easting_m);
  });

  test("with --verbose shows the steps of every run", () => {
    const ran = toeline(["reduce", example, "--verbose"]);
    expect(ran.stdout).toMatch(/^Run .*: element /m);
    expect(ran.stdout).toMatch(/heading-closure +model .*misclosure -?[\d.]+ deg/);
  });

  test("is checked: every finding has its place, and the last line counts them", () => {
    const ran = toeline(["check", example]);
    expect(ran.code).toBeLessThan(2);
    const lines = ran.stdout.trimEnd().split("\n");
    expect(lines.at(-1)).toMatch(/\d+ elements, \d+ runs; (no findings|\d+ (error|warning|note))/);
    expect(lines.filter((line) => /^(Error|Warning|Note) /.test(line)).length > 0).toBe(
      !lines.at(-1)!.includes("no findings"),
    );
    expect(ran.code).toBe(/\d+ errors?/.test(lines.at(-1)!) ? 1 : 0);
  });

  test("is found from where the user stands, also through the checkout's own script", () => {
    const script = join(repository, "scripts/toeline.mjs");
    const ran = runNode([script, "check", "shaft-and-pier"], repository, {
      INIT_CWD: join(repository, "examples"),
    });
    expect(ran.code).toBe(toeline(["check", example]).code);
    expect(ran.stderr).toBe("");
  });
});
