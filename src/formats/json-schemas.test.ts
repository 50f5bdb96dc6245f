import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { jsonSchemas } from "./json-schemas.ts";

describe.each(Object.entries(jsonSchemas()))("schema of %s", (name, schema) => {
  test("the published file is the one that the reader uses; if not, run npx tsx scripts/make-schemas.mjs", () => {
    const url = new URL(`../../docs/formats/schema/${name}.schema.json`, import.meta.url);
    expect(JSON.parse(readFileSync(url, "utf8"))).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  test("allows keys that it does not name", () => {
    expect(JSON.stringify(schema)).not.toContain('"additionalProperties":false');
  });
});
