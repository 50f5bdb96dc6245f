// Writes the JSON Schemas of the files that Toeline defines, from the schemas that the reader itself uses.
// Run with: npx tsx scripts/make-schemas.mjs
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { jsonSchemas } from "#formats";

const folder = join(dirname(fileURLToPath(import.meta.url)), "../docs/formats/schema");
mkdirSync(folder, { recursive: true });
for (const [name, schema] of Object.entries(jsonSchemas()))
  writeFileSync(join(folder, `${name}.schema.json`), `${JSON.stringify(schema, null, 2)}\n`);
