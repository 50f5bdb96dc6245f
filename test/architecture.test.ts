import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";

interface Layer {
  /** folders under src/ it may import, by their door */
  readonly may: readonly string[];
  /** npm packages it may import */
  readonly packages: readonly string[];
  /** whether it may use Node's own modules */
  readonly node?: true;
}

const below = [
  "core",
  "geodesy",
  "text",
  "formats",
  "figures",
  "simulator",
  "link",
  "records",
  "exchange",
  "evidence",
  "sync",
];

/** The whole import policy, for the layers there are and those to come; docs/decisions/0001 says why. */
const POLICY: Readonly<Record<string, Layer>> = {
  core: { may: [], packages: ["ml-matrix", "flatbush"] },
  geodesy: { may: ["core"], packages: ["proj4", "geomagnetism"] },
  text: { may: ["core"], packages: ["intl-messageformat"] },
  formats: {
    may: ["core", "geodesy"],
    packages: ["papaparse", "fast-xml-parser", "fflate", "read-excel-file", "write-excel-file", "zod"],
  },
  figures: { may: ["core", "text"], packages: ["d3-scale", "d3-shape"] },
  simulator: { may: ["core", "geodesy"], packages: [] },
  link: { may: ["core"], packages: [] },
  records: { may: ["core"], packages: ["zod"] },
  store: { may: ["records", "core"], packages: ["dexie", "better-sqlite3", "pg", "kysely"], node: true },
  exchange: { may: ["core", "geodesy", "formats", "records"], packages: [] },
  evidence: { may: ["core", "formats", "records"], packages: ["zod"] },
  sync: { may: ["core", "records", "store"], packages: ["zod"] },
  report: {
    may: ["core", "geodesy", "text", "figures", "records", "formats"],
    packages: [
      "easy-template-x",
      "@myriaddreamin/typst-ts-node-compiler",
      "@resvg/resvg-js",
      "dejavu-fonts-ttf",
      "@expo-google-fonts/source-sans-3",
      "qrcode-generator",
      "fflate",
      "zod",
      "write-excel-file",
    ],
    node: true,
  },
  server: {
    may: [...below, "store", "report"],
    packages: [
      "fastify",
      "@fastify/cookie",
      "@fastify/helmet",
      "@fastify/rate-limit",
      "@fastify/static",
      "@fastify/swagger",
      "@fastify/websocket",
      "fastify-type-provider-zod",
      "openapi-types",
      "@simplewebauthn/server",
      "graphile-worker",
      "piscina",
      "kysely",
      "zod",
    ],
    node: true,
  },
  web: {
    may: [...below, "store", "report"],
    packages: [
      "react",
      "react-dom",
      "react-aria-components",
      "react-router",
      "@simplewebauthn/browser",
      "uplot",
      "three",
      "comlink",
      "intl-messageformat",
      "@fontsource/source-sans-3",
    ],
  },
  cli: { may: [...below, "store", "report", "server"], packages: ["commander", "serialport"], node: true },
};

/** Folders of core, lowest first: a folder may use only itself and those before it, and result.ts at the root. */
const CORE_ORDER = [
  "units",
  "num",
  "geometry",
  "frames",
  "elements",
  "readings",
  "calibration",
  "correction",
  "path",
  "uncertainty",
  "criteria",
  "neighbours",
  "planning",
  "statistics",
  "survey",
];
const CORE_ROOT = ["index.ts", "result.ts"];

/** Words the core may not say: each makes a result depend on when, where or by whom it is computed. */
const CORE_FORBIDDEN =
  /\b(Date\.now|Date\.parse|new Date\b|Math\.random|performance\.now|crypto\.|toLocale\w*|localeCompare|Intl\.|globalThis|setTimeout|setInterval|queueMicrotask|process\.|console\.|fetch\()/;

/** Making a quantity out of a number is a named step: only where units are made and where files are read. */
const QUANTITY_CAST = /\bas (?:Metres|Radians|Seconds|GridAzimuth|TrueAzimuth|MagneticAzimuth|Quantity<)/;
const MAY_CAST = ["core/units/", "formats/"];

/** Files that may catch, with the reason. Everything else returns a Result, or lets a mistake of ours through. */
const MAY_CATCH: Readonly<Record<string, string>> = {
  "cli/main.ts": "the outermost edge: one line for people instead of a stack trace",
  "formats/text/attempt.ts":
    "decoders and archive readers report bad data by throwing; here it becomes a Result",
  "records/attempt.ts":
    "the platform's JSON reader and cryptography report bad data by throwing; here it becomes a Result",
  "web/attempt.ts": "browsers tell a full or forbidden store and a lost connection by throwing",
  "sync/attempt.ts": "fetch and its streams tell a lost connection by throwing; here it becomes a Result",
  "server/attempt.ts":
    "files, sockets and addresses report what failed by throwing; here it becomes a Result",
  "report/attempt.ts":
    "the typesetter and the template engine report bad data by throwing; here it becomes a Result",
  "store/attempt.ts":
    "databases tell a full disk, a lost connection or a damaged file by throwing; here it becomes a Result",
};

const repository = resolve(import.meta.dirname, "..");
const root = join(repository, "src");

interface Source {
  readonly file: string;
  readonly code: string;
}

const sources: readonly Source[] = readdirSync(root, { recursive: true, encoding: "utf8" })
  .filter((file) => /\.tsx?$/.test(file) && !/\.(?:test|d)\.tsx?$/.test(file))
  .map((file) => ({ file: file.split(sep).join("/"), code: readFileSync(join(root, file), "utf8") }));

/** Only the code: what stands in comments is prose. */
const withoutComments = (code: string) =>
  code.replaceAll(/\/\*[\s\S]*?\*\//g, "").replaceAll(/(^|[^:"'`])\/\/.*$/gm, "$1");
/** As the compiler sees them, so that the word "from" in a text is no import. Comments are no code here either. */
function importsOf(code: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const named =
      ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
        ? node.moduleSpecifier
        : ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword
          ? node.arguments[0]
          : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
            ? node.argument.literal
            : undefined;
    if (named && ts.isStringLiteralLike(named)) found.push(named.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile("a.ts", code, ts.ScriptTarget.Latest, false, ts.ScriptKind.TS));
  return found;
}

function importViolation(file: string, layer: string, target: string): string | undefined {
  const policy = POLICY[layer]!;
  const [head, ...rest] = target.split("/");
  if (head!.startsWith("#")) {
    if (rest.length > 0) return `enter a layer by its door, not by ${target}`;
    if (head!.slice(1) === layer) return `inside ${layer} imports are relative, not ${target}`;
    if (!policy.may.includes(head!.slice(1))) return `${layer} must not import ${head!.slice(1)}`;
    return undefined;
  }
  if (head!.startsWith(".")) return relativeViolation(file, layer, target);
  if (head!.startsWith("node:"))
    return policy.node ? undefined : `${layer} must not import package ${target}`;
  const name = head!.startsWith("@") ? `${head}/${rest[0]}` : head!;
  return policy.packages.includes(name) ? undefined : `${layer} must not import package ${name}`;
}

function relativeViolation(file: string, layer: string, target: string): string | undefined {
  const inside = relative(join(root, layer), resolve(root, dirname(file), target))
    .split(sep)
    .join("/");
  if (inside.startsWith("..")) return `${layer} must not reach out of its folder with ${target}`;
  if (inside === "index.ts") return `the door of ${layer} is for other layers, not for ${layer} itself`;
  if (!/\.(ts|tsx|json|css)$/.test(target)) return `write the ending in ${target}`;
  const own = file.split("/").slice(1);
  if (layer !== "core" || own[0] === "index.ts") return undefined;
  const other = inside.split("/");
  if (other.length === 1) return other[0] === "result.ts" ? undefined : `core has no ${inside} at its root`;
  if (own.length === 1) return `core/${own[0]} must not use core/${other[0]}`;
  return CORE_ORDER.indexOf(other[0]!) > CORE_ORDER.indexOf(own[0]!)
    ? `core/${own[0]} must not use core/${other[0]}`
    : undefined;
}

function wordViolations(file: string, layer: string, code: string): string[] {
  const found: string[] = [];
  const forbidden = layer === "core" && CORE_FORBIDDEN.exec(code);
  if (forbidden) found.push(`core must not use ${forbidden[1]}`);
  if (QUANTITY_CAST.test(code) && !MAY_CAST.some((start) => file.startsWith(start)))
    found.push("make quantities with the functions of core/units, not with a cast");
  if (/\bcatch\s*[({]/.test(code) && !(file in MAY_CATCH)) found.push("catches; see MAY_CATCH");
  if (/\bexport\s*\*/.test(code)) found.push("names what it exports one by one, not with export *");
  if (/\bexport\s+default\b/.test(code)) found.push("has no default export");
  if (/\bimport\s*\(\s*[^"'\s]/.test(code))
    found.push("imports by a computed name, which no check can follow");
  if (/\benum\s+\w+\s*\{/.test(code)) found.push("uses an enum");
  return found;
}

function violations(files: readonly Source[]): string[] {
  const found: string[] = [];
  for (const { file, code: text } of files) {
    const [layer, ...inside] = file.split("/");
    if (POLICY[layer!] === undefined) {
      found.push(`${file}: folder "${layer}" has no entry in POLICY`);
      continue;
    }
    if (layer === "core" && inside.length === 1 && !CORE_ROOT.includes(inside[0]!))
      found.push(`${file}: only ${CORE_ROOT.join(" and ")} stand at the root of core`);
    if (layer === "core" && inside.length > 1 && !CORE_ORDER.includes(inside[0]!))
      found.push(`${file}: core/${inside[0]} has no place in CORE_ORDER`);
    const code = withoutComments(text);
    const imports = importsOf(code).map((target) => importViolation(file, layer!, target));
    for (const message of [...imports, ...wordViolations(file, layer!, code)])
      if (message !== undefined) found.push(`${file}: ${message}`);
  }
  return found;
}

test("every import goes in an allowed direction and nobody says a forbidden word", () => {
  expect(sources.length).toBeGreaterThan(10);
  expect(violations(sources)).toEqual([]);
});

test("every file that may catch still does", () => {
  for (const file of Object.keys(MAY_CATCH)) {
    const source = sources.find((one) => one.file === file);
    expect(source && /\bcatch\s*[({]/.test(withoutComments(source.code)), file).toBe(true);
  }
});

describe("the compiler is told the same arrows", () => {
  const layers = readdirSync(root);
  const references = (file: string) => {
    const config = JSON.parse(readFileSync(join(repository, file), "utf8")) as {
      references: readonly { path: string }[];
    };
    return config.references.map((one) => one.path);
  };

  test.each(layers)("%s", (layer) => {
    for (const path of references(`src/${layer}/tsconfig.json`))
      expect(POLICY[layer]?.may, `${layer} refers to ${path}`).toContain(path.replace("../", ""));
    expect(references("tsconfig.json")).toContain(`src/${layer}`);
    const door = layer === "web" ? "main.tsx" : "index.ts";
    expect(existsSync(join(root, layer, door)), "a layer has a door; the app is its own").toBe(true);
  });
});

describe("the check itself sees", () => {
  test.each([
    ["core/num/a.ts", 'import { x } from "#web";', "core must not import web"],
    ["core/num/a.ts", 'export { a } from "../../formats/x.ts";', "core must not reach out of its folder"],
    ["web/a.tsx", 'import { fitLine } from "#core/num/fit-line";', "enter a layer by its door"],
    [
      "core/num/a.ts",
      'import { decide } from "../criteria/decide.ts";',
      "core/num must not use core/criteria",
    ],
    ["core/result.ts", 'import { a } from "./num/a.ts";', "core/result.ts must not use core/num"],
    ["core/num/a.ts", 'import { a } from "../index.ts";', "the door of core is for other layers"],
    ["core/num/a.ts", 'import fc from "fast-check";', "core must not import package fast-check"],
    ["core/num/a.ts", 'const m = await import("node:fs");', "core must not import package node:fs"],
    ["core/num/a.ts", "export const t = Date.now();", "core must not use Date.now"],
    ["core/stray/a.ts", "", "core/stray has no place in CORE_ORDER"],
    ["core/stray.ts", "", "only index.ts and result.ts stand at the root of core"],
    ["formats/a.ts", 'import type { P } from "#web";', "formats must not import web"],
    ["formats/a.ts", 'import { P } from "#formats";', "inside formats imports are relative"],
    ["formats/a.ts", "try { read(); } catch { return; }", "catches; see MAY_CATCH"],
    ["figures/a.ts", "const m = 3 as Metres;", "make quantities with the functions of core/units"],
    ["figures/a.ts", 'export * from "./b.ts";', "names what it exports one by one"],
    ["figures/a.ts", "const m = await import(name);", "imports by a computed name"],
    ["cli/a.ts", 'import { b } from "./b";', "write the ending in ./b"],
    ["stray/a.ts", "", 'folder "stray" has no entry'],
  ])("%s: %s", (file, code, expected) => {
    expect(violations([{ file, code }]).join()).toContain(expected);
  });

  test("but not what stands in comments, nor what is allowed", () => {
    const code = '// never Date.now\n/* import x from "#web" */\nimport { contract } from "../result.ts";\n';
    expect(violations([{ file: "core/num/a.ts", code }])).toEqual([]);
    expect(violations([{ file: "cli/a.ts", code: 'import { readFileSync } from "node:fs";' }])).toEqual([]);
  });
});
