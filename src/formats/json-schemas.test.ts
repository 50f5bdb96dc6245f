import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { jobSchema } from "./job-folder/schema/job-schema.ts";
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

test("the example on the page of the job folder is what the schema says, and nothing of it is unknown", () => {
  const page = readFileSync(new URL("../../docs/formats/job-folder.md", import.meta.url), "utf8");
  const example: unknown = JSON.parse(/```json\n([\s\S]*?)```/.exec(page)![1]!);
  expect(jobSchema.safeParse(example).error).toBeUndefined();
});

test("the page of the job folder names every field of the schema", () => {
  const page = readFileSync(new URL("../../docs/formats/job-folder.md", import.meta.url), "utf8");
  const fields = new Set(
    [
      ...JSON.stringify(jsonSchemas().job).matchAll(
        /"([a-z0-9_]+)":\{"(?:type|anyOf|enum|description|minimum|format)"/g,
      ),
    ].map((m) => m[1]!),
  );
  expect(fields.size).toBeGreaterThan(40);
  const known = new Set(["properties", "items", "remark"]);
  expect([...fields].filter((field) => !known.has(field) && !page.includes(field))).toEqual([]);
});
