import { resolve } from "node:path";
import { build } from "esbuild";
import { expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");

/** Files and packages that a program gets which imports the layer by its door. */
async function reachedFrom(condition: "browser" | "default"): Promise<readonly string[]> {
  const { metafile } = await build({
    stdin: { contents: 'import "#store";', resolveDir: root },
    absWorkingDir: root,
    bundle: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: condition === "browser" ? "browser" : "node",
    packages: "external",
    logLevel: "silent",
  });
  const files = Object.entries(metafile.inputs);
  return files.flatMap(([file, { imports }]) => [
    file,
    ...imports.filter((one) => one.external).map((one) => one.path),
  ]);
}

test("a browser never sees a server's database", async () => {
  const reached = await reachedFrom("browser");
  expect(reached).toContain("src/store/index-browser.ts");
  expect(reached).toContain("dexie");
  const forbidden = /^(?:better-sqlite3|pg|kysely|node:.*)$|\/(?:sql|sqlite|postgres)\//;
  expect(reached.filter((name) => forbidden.test(name))).toEqual([]);
});

test("Node does not load the browser's database", async () => {
  const reached = await reachedFrom("default");
  expect(reached).toContain("src/store/index.ts");
  expect(reached).toContain("better-sqlite3");
  expect(reached.filter((name) => name === "dexie" || name.includes("/browser/"))).toEqual([]);
});
