import type { JsonObject, JsonValue } from "#records";

/** job.json with one line for each setting, criterion, calibration or run, so that a person can read and change it. */
export function jobText(job: JsonObject): string {
  const parts = Object.entries(job).map(([key, value]) => `  ${JSON.stringify(key)}: ${partText(value)}`);
  return `{\n${parts.join(",\n")}\n}\n`;
}

function partText(value: JsonValue): string {
  if (!Array.isArray(value)) return JSON.stringify(value);
  const items = (value as readonly JsonValue[]).map((item) => `    ${JSON.stringify(item)}`);
  return items.length === 0 ? "[]" : `[\n${items.join(",\n")}\n  ]`;
}
