import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, test } from "vitest";
import published from "../../test/published/rfc-8032/case.json" with { type: "json" };
import { unwrap, verifier } from "../../test/support/records.ts";
import { verifyLog } from "./chain/verify-log.ts";
import { sha256Hex, utf8 } from "./crypto/hash.ts";
import { canonicalEntry } from "./entry/canonical-entry.ts";
import { ENTRY_FORMAT, type Entry, MAX_ENTRY_BYTES } from "./entry/entry.ts";
import { entryKinds } from "./kinds/registry.ts";
import { SEAL_FORMAT } from "./kinds/seal-schema.ts";
import { HEAD_FORMAT, rootOfIds } from "./tree/tree-head.ts";

const page = readFileSync(resolve(import.meta.dirname, "../../docs/formats/entry-log.md"), "utf8");
const [entriesText, canonicalText, rootText] = [...page.matchAll(/```(?:json|text)\n([\s\S]*?)\n```/g)].map(
  (match) => match[1]!,
);
const entries = JSON.parse(entriesText!) as readonly Entry[];

test("the example on the page is sound, and its canonical form, id and root are as printed there", async () => {
  const [first, second] = entries;
  expect(first!.device).toBe(published.vectors[0]!.pub);
  const report = await verifyLog(entries, "wall-a", verifier);
  expect(report.findings).toEqual([]);
  expect(report.sound).toHaveLength(2);
  expect(unwrap(canonicalEntry(second!))).toBe(canonicalText);
  expect(await sha256Hex(utf8(canonicalText!))).toBe(second!.id);
  expect(page).toContain(`one line of ${utf8(canonicalText!).length} bytes`);
  expect(await rootOfIds(entries.map((entry) => entry.id))).toBe(rootText);
});

test("the page names every kind with every field of its body, and no other kind", () => {
  const table = page.slice(page.indexOf("## Kinds"), page.indexOf("`about` names a thing"));
  const rows = table.split("\n").filter((row) => row.startsWith("| `"));
  const named = rows.flatMap((row) =>
    [...row.split("|")[1]!.matchAll(/`([^`]+)`/g)].map((match) => match[1]!),
  );
  expect(named.sort()).toEqual(entryKinds.map((kind) => kind.id).sort());
  for (const kind of entryKinds.filter(({ example }) => !("set" in example))) {
    const row = rows.find((one) => one.split("|")[1]!.includes(`\`${kind.id}\``))!;
    for (const field of Object.keys(kind.example)) expect(row, kind.id).toContain(`\`${field}\``);
  }
});

test("the page gives the formats and the limit that the program has", () => {
  for (const format of [ENTRY_FORMAT, SEAL_FORMAT, HEAD_FORMAT]) expect(page).toContain(`"${format}"`);
  expect(page).toContain(MAX_ENTRY_BYTES.toLocaleString("en"));
});
