import { describe, expect, test } from "vitest";
import { Pen, signerOf, verifier } from "../../../test/support/records.ts";
import { checkEntry } from "../entry/check-entry.ts";
import { FIRST_KIND } from "../entry/entry.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { parseJson } from "../json/parse-json.ts";
import { foldJob } from "../state/fold-job.ts";
import { entryKinds, kindOf } from "./registry.ts";

const pen = async () => new Pen(await signerOf(1));

describe.each(entryKinds.map((kind) => [kind.id, kind] as const))("%s", (id, kind) => {
  const write = async (body: typeof kind.example) => {
    const device = await pen();
    if (id !== FIRST_KIND) await device.write(FIRST_KIND, { public_key: device.device, name: "Tablet 1" });
    return device.write(id, body);
  };

  test("has an id that can be written, a revision and both languages", () => {
    expect(id).toMatch(/^[a-z][a-z-]*$/);
    expect(kindOf(id)).toBe(kind);
    expect(Number.isInteger(kind.revision) && kind.revision >= 1).toBe(true);
    for (const language of ["en", "de"] as const) {
      expect(kind.text[language].name.trim()).not.toBe("");
      expect(kind.text[language].explanation).toMatch(/\.$/);
    }
  });

  test("its example does something, in one thing or more", () => {
    const read = kind.read(kind.example);
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.value.length).toBeGreaterThan(0);
    for (const effect of read.ok ? read.value : [])
      expect(effect.thing).toMatch(/^[a-z][a-z-]*(\/[^/\s]+)*$/);
  });

  test("goes through text and back unchanged, and is sound there", async () => {
    const entry = await write(kind.example);
    expect(entry.revision).toBe(kind.revision);
    const text = canonicalJson(entry);
    const parsed = parseJson(text.ok ? text.value : "");
    const checked = await checkEntry(parsed.ok ? parsed.value : undefined, verifier);
    expect(checked).toEqual({ ok: true, value: entry });
    expect(entry.body).toEqual(kind.example);
  });

  test("a field that this version does not know is kept, signed and shown", async () => {
    const entry = await write({ ...kind.example, later_field: { a: [1, "two", null] } });
    expect(entry.body["later_field"]).toEqual({ a: [1, "two", null] });
    expect(await checkEntry(entry, verifier)).toMatchObject({ ok: true });
    expect(foldJob([entry]).unread).toEqual([]);
  });

  test("a body with a needed field taken out or of the wrong type is told with its place", () => {
    const refused = Object.keys(kind.example).flatMap((field) => {
      const { [field]: _taken, ...without } = kind.example;
      return [{ wrong: "type" }, 17.5].flatMap((wrong) => {
        const read = kind.read({ ...without, [field]: wrong });
        return read.ok ? [] : read.error;
      });
    });
    expect(refused.length).toBeGreaterThan(0);
    for (const issue of refused) {
      expect(issue.code).toBe("records.body-shape");
      expect(issue.values["kind"]).toBe(id);
    }
    expect(kind.read({})).toMatchObject({ ok: false });
    expect(kind.read(null)).toMatchObject({ ok: false });
  });
});

test("no two kinds have the same id", () => {
  expect(new Set(entryKinds.map((kind) => kind.id)).size).toBe(entryKinds.length);
});

test("readings have columns of one length", () => {
  const readings = kindOf("readings");
  const read = (columns: object) => readings?.read({ run: "R1", columns }).ok;
  expect(read({ depth_m: [1, 2], tilt_x_deg: [0.1, null] })).toBe(true);
  expect(read({ depth_m: [1, 2], tilt_x_deg: [0.1] })).toBe(false);
  expect(read({ depth_m: [] })).toBe(false);
  expect(read({})).toBe(false);
  expect(read({ depth_m: [Number.NaN] })).toBe(false);
});
