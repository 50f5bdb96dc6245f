import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Served, serve } from "../support/served.ts";

interface Operation {
  readonly summary?: string;
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly responses: Readonly<Record<string, unknown>>;
}
interface Document {
  readonly openapi: string;
  readonly info: { readonly title: string; readonly version: string };
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

let served: Served;
let document: Document;
beforeAll(async () => {
  served = await serve();
  document = await fetched("/api/1/openapi.json").then((answer) => answer.json());
});
afterAll(() => served.close());

const fetched = (url: string) => served.app.inject({ url, headers: { host: "localhost" } });

/** What a JSON pointer leads to. */
const at = (pointer: string): unknown =>
  pointer
    .split("/")
    .reduce<unknown>((place, name) => (place as Record<string, unknown> | undefined)?.[name], document);

/** Routes as the router itself lists them, so that one without a description is seen too. */
function routes(): readonly string[] {
  const lines = served.app.printRoutes({ commonPrefix: false, includeHooks: false }).split("\n");
  const found: string[] = [];
  const above: string[] = [];
  for (const line of lines) {
    const [, indent = "", rest = ""] = /^([│├└─\s]*)(.*)$/.exec(line) ?? [];
    const depth = indent.length / 4;
    const [, path = "", methods] = /^(.*?)(?: \(([A-Z, ]+)\))?$/.exec(rest) ?? [];
    above.length = depth;
    above[depth] = path;
    for (const method of methods?.split(", ") ?? []) found.push(`${method} ${above.slice(1).join("")}`);
  }
  return found;
}

describe("the description of the interface", () => {
  test("is OpenAPI 3.1 and every reference in it leads somewhere", () => {
    expect(document.openapi).toBe("3.1.0");
    const references = [...JSON.stringify(document).matchAll(/"\$ref":"#\/([^"]+)"/g)];
    expect(references.length).toBeGreaterThan(10);
    for (const [, pointer = ""] of references) expect(at(pointer), pointer).toBeTypeOf("object");
    for (const name of ["Problem", "JobSummary", "TreeHead"])
      expect(document.components.schemas[name]).toMatchObject({ type: "object" });
  });

  test("holds every route of the server but WebSockets and the app", () => {
    const described = Object.entries(document.paths).flatMap(([path, item]) =>
      Object.keys(item).map((method) => `${method.toUpperCase()} ${path.replaceAll(/\{(\w+)\}/g, ":$1")}`),
    );
    const all = routes().filter(
      (route) => !/^(?:HEAD|OPTIONS) |\/live$/.test(route) || / \/api\/1\/health\/live$/.test(route),
    );
    const shown = all.filter((route) => !/^HEAD /.test(route));
    expect(shown.length).toBeGreaterThan(20);
    expect(shown.filter((route) => !described.includes(route))).toEqual([]);
  });

  test("says of every route in a sentence what it does, names its parameters, and what an error looks like", () => {
    for (const [path, item] of Object.entries(document.paths))
      for (const [method, operation] of Object.entries(item)) {
        const name = `${method} ${path}`;
        expect(operation.summary?.length, name).toBeGreaterThan(5);
        expect(operation.responses["default"], name).toBeDefined();
        const named = (operation.parameters ?? []).filter((one) => one.in === "path").map((one) => one.name);
        expect(named.toSorted(), name).toEqual(
          [...path.matchAll(/\{(\w+)\}/g)].map(([, one]) => one!).toSorted(),
        );
      }
  });

  test("can be read as a page that needs no script and nothing from elsewhere", async () => {
    const { body, headers } = await fetched("/api/1/docs");
    expect(headers["content-type"]).toContain("text/html");
    expect(body).not.toMatch(/<script|https?:\/\/|style=/i);
    for (const path of Object.keys(document.paths)) expect(body).toContain(path);
    expect((await fetched("/api/1/docs.css")).headers["content-type"]).toContain("text/css");
  });
});
