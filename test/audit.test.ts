import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";

const repository = resolve(import.meta.dirname, "..");
const NOT_OURS = new Set(["node_modules", "dist", "out", ".git", "coverage"]);

/** Every file of the project, relative to its root, with "/" between folders. */
const files: readonly string[] = list(repository);

function list(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (NOT_OURS.has(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? list(path) : [relative(repository, path).split(sep).join("/")];
  });
}

const read = (file: string) => readFileSync(join(repository, file), "utf8");
const parse = (file: string, code: string) =>
  ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS);
const testFiles = files.filter((file) => /\.test\.tsx?$/.test(file) && file !== "test/audit.test.ts");

describe("tests", () => {
  test("none is left out or run alone", () => {
    const left = testFiles.flatMap((file) =>
      [...read(file).matchAll(/\b(?:test|it|describe)(?:\.\w+)*\.(?:only|skip|todo|fails)\b/g)].map(
        (match) => `${file}: ${match[0]}`,
      ),
    );
    expect(testFiles.length).toBeGreaterThan(3);
    expect(left).toEqual([]);
  });

  test("every body expects something", () => {
    expect(testFiles.flatMap((file) => bodiesWithoutExpectation(file, read(file)))).toEqual([]);
  });

  test("the check sees an empty body, and an expectation made in a function of the same file", () => {
    expect(bodiesWithoutExpectation("a.test.ts", 'test("a", () => { run(); });')).toEqual(["a.test.ts: a"]);
    expect(bodiesWithoutExpectation("a.test.ts", 'test.each([1])("b", () => run());')).toEqual([
      "a.test.ts: b",
    ]);
    const helped = 'function same(a: number) { expect(a).toBe(1); }\ntest("c", () => same(1));';
    expect(bodiesWithoutExpectation("a.test.ts", helped)).toEqual([]);
  });
});

function bodiesWithoutExpectation(file: string, code: string): string[] {
  const source = parse(file, code);
  const expects = (text: string) => /\bexpect\w*\s*[(.]|\bfc\.assert\s*\(/.test(text);
  const helpers = source.statements.flatMap((statement) => {
    const names: string[] = [];
    if (ts.isFunctionDeclaration(statement) && statement.name) names.push(statement.name.text);
    if (ts.isVariableStatement(statement))
      names.push(...statement.declarationList.declarations.map((one) => one.name.getText()));
    return expects(statement.getText()) ? names : [];
  });
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && /^(?:test|it)\b/.test(node.expression.getText())) {
      const body = node.arguments.find((one) => ts.isArrowFunction(one) || ts.isFunctionExpression(one));
      const text = body?.getText() ?? "";
      const helped = helpers.some((name) => new RegExp(`\\b${name}\\b`).test(text));
      if (body && !expects(text) && !helped) {
        const title = node.arguments[0];
        found.push(`${file}: ${title && ts.isStringLiteralLike(title) ? title.text : "(no title)"}`);
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe("data", () => {
  /** Files over 1 MB that have to be so, each with its reason. */
  const LARGE: Readonly<Record<string, string>> = {
    "package-lock.json": "made by npm",
  };

  test("no file is over 1 MB without a reason", () => {
    const large = files.filter((file) => statSync(join(repository, file)).size > 1_000_000);
    expect(large.filter((file) => !(file in LARGE))).toEqual([]);
  });

  test("every published case says where it comes from", () => {
    const folder = join(repository, "test/published");
    const cases = existsSync(folder) ? readdirSync(folder) : [];
    expect(cases.length).toBeGreaterThan(0);
    expect(cases.filter((name) => !existsSync(join(folder, name, "SOURCE.md")))).toEqual([]);
  });

  test("every published case is used by a test", () => {
    const folder = join(repository, "test/published");
    const code = files
      .filter((file) => /\.ts$/.test(file))
      .map(read)
      .join("\n");
    expect(readdirSync(folder).filter((name) => !code.includes(name))).toEqual([]);
  });
});

describe("words", () => {
  // In pieces, so that this file does not find itself.
  const FOREIGN = [
    ["/wo", "rk/"],
    [".libr", "ary"],
    ["contra", "cts.md"],
    ["/tm", "p/brief"],
    ["hel", "per session"],
  ];
  const foreign = FOREIGN.map((pieces) => pieces.join(""));

  test("no file names a path of the machine it was made on", () => {
    const text = files.filter((file) => /\.(ts|tsx|mjs|md|json|csv|svg|html|ya?ml)$|\/run$/.test(file));
    const found = text.flatMap((file) => {
      const content = read(file);
      return foreign.filter((word) => content.includes(word)).map((word) => `${file}: ${word}`);
    });
    expect(text.length).toBeGreaterThan(20);
    expect(found).toEqual([]);
  });
});

describe("documentation", () => {
  const pages = files.filter((file) => file.endsWith(".md"));
  const slug = (heading: string) =>
    heading
      .toLowerCase()
      .replaceAll(/[`*]/g, "")
      .replaceAll(/[^\p{L}\p{N}\s_-]/gu, "")
      .trim()
      .replaceAll(/\s/g, "-");
  const anchorsOf = (page: string) =>
    [...read(page).matchAll(/^#+\s+(.+)$/gm)].map((match) => slug(match[1]!));

  test("every link leads to a file and a heading that exist", () => {
    const broken = pages.flatMap((page) =>
      [...read(page).matchAll(/\]\(([^)\s]+)(?:\s+"[^"]*")?\)/g)]
        .map((match) => match[1]!)
        .filter((target) => !/^[a-z]+:/.test(target))
        .filter((target) => {
          const [path = "", anchor] = target.split("#");
          const file = path === "" ? page : join(dirname(page), path).split(sep).join("/");
          if (!existsSync(join(repository, file))) return true;
          return anchor !== undefined && file.endsWith(".md") && !anchorsOf(file).includes(anchor);
        })
        .map((target) => `${page}: ${target}`),
    );
    expect(pages.length).toBeGreaterThan(5);
    expect(broken).toEqual([]);
  });

  test("every entry of docs/sources.md that is cited stands there", () => {
    const known = new Set(
      [...read("docs/sources.md").matchAll(/^#+ .*\[([A-Z]\d+)\]/gm)].map((one) => one[1]!),
    );
    const cited = files
      .filter((file) => /^(src|docs|test|bench)\/.*\.(ts|md)$/.test(file))
      .flatMap((file) =>
        [...read(file).matchAll(/sources\.md\)?((?:[\s,*]*(?:and )?\[[A-Z]\d+\])+)/g)].flatMap((match) =>
          [...match[1]!.matchAll(/\[([A-Z]\d+)\]/g)].map((one) => ({ file, id: one[1]! })),
        ),
      );
    expect(cited.length).toBeGreaterThan(5);
    expect(cited.filter((one) => !known.has(one.id))).toEqual([]);
  });

  test("every function of the computation names its frame and its source", () => {
    const computation = /^src\/core\/(?:correction|path|uncertainty|criteria|neighbours)\//;
    const code = files.filter(
      (file) => computation.test(file) && file.endsWith(".ts") && !file.includes(".test."),
    );
    expect(code.length).toBeGreaterThan(5);
    // only what leaves the core and computes; these look up what is there, or put a value into the unit of its table
    const accessors = [
      "positionAt",
      "tangentAt",
      "criterion",
      "sourceKind",
      "instrumentClassOf",
      "budgetKey",
      "sourceValueToSi",
      "sourceValueFromSi",
    ];
    const door = new Set(read("src/core/index.ts").match(/\w+/g));
    const lacking = code.flatMap((file) => functionsWithoutSource(file, read(file)));
    expect(
      lacking.filter(({ name }) => door.has(name) && !accessors.includes(name)).map(({ text }) => text),
    ).toEqual([]);
  });

  test("the check sees a function without them", () => {
    const bare = "/** Adds. */\nexport function add(a: number) { return a; }";
    const full =
      "/**\n * Adds.\n *\n * Frame: none.\n * Source: definition.\n */\nexport const add = (a: number) => a;";
    expect(functionsWithoutSource("a.ts", bare).map(({ text }) => text)).toEqual([
      "a.ts: add lacks Frame:",
      "a.ts: add lacks Source:",
    ]);
    expect(functionsWithoutSource("a.ts", full)).toEqual([]);
  });
});

interface Lacking {
  readonly name: string;
  readonly text: string;
}

function functionsWithoutSource(file: string, code: string): Lacking[] {
  const source = parse(file, code);
  return source.statements.flatMap((statement) => {
    if (!ts.canHaveModifiers(statement)) return [];
    if (!ts.getModifiers(statement)?.some((one) => one.kind === ts.SyntaxKind.ExportKeyword)) return [];
    const names: string[] = [];
    if (ts.isFunctionDeclaration(statement) && statement.name) names.push(statement.name.text);
    if (ts.isVariableStatement(statement))
      for (const one of statement.declarationList.declarations)
        if (
          one.initializer &&
          (ts.isArrowFunction(one.initializer) || ts.isFunctionExpression(one.initializer))
        )
          names.push(one.name.getText());
    const comment = code.slice(statement.getFullStart(), statement.getStart());
    return names.flatMap((name) =>
      ["Frame:", "Source:"]
        .filter((word) => !comment.includes(word))
        .map((word) => ({ name, text: `${file}: ${name} lacks ${word}` })),
    );
  });
}
