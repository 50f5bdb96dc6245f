import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { utf8 } from "#records";
import { createRandom } from "#simulator";
import { evidenceOfJob, filesOf, packed } from "../../test/support/evidence.ts";
import { unwrap } from "../../test/support/records.ts";
import { MAX_LINE_BYTES } from "./bag/lines.ts";
import { verifyEvidenceBag } from "./check/verify-evidence-bag.ts";
import { writeEvidenceBag } from "./write/write-evidence-bag.ts";

const bag = unwrap(await writeEvidenceBag(await evidenceOfJob()));

test.each([
  ["nothing", new Uint8Array(0)],
  ["a text", utf8("hello")],
  ["an archive without a bag", zipSync({ "a.txt": utf8("hello") })],
  ["a path that leads outside", zipSync({ "../bagit.txt": utf8("x") })],
  ["a swelling archive", zipSync({ "data/entries.jsonl": new Uint8Array(5_000_000) })],
])("%s is no bag", async (_what, bytes) => {
  const report = await verifyEvidenceBag(bytes);
  expect(report).toMatchObject({ verdict: "no-bag", isSound: false });
  expect(report.findings.length).toBeGreaterThan(0);
});

describe("hostile lines are told and do no harm", () => {
  const fileNames = ["entries.jsonl", "heads.jsonl", "ids.txt", "seals.jsonl", "keys.json"];
  const hostile = [
    ["a huge line", utf8(`${"x".repeat(MAX_LINE_BYTES + 1)}\n`)],
    ["brackets without end", utf8(`${"[".repeat(100_000)}${"]".repeat(100_000)}\n`)],
    ["null, numbers, lists", utf8('null\n3\n[]\n"x"\n{}\n')],
    ["prototypes", utf8('{"__proto__":{"id":1},"constructor":1,"toString":null}\n')],
    ["no UTF-8", Uint8Array.from([0xff, 0xfe, 0, 10])],
    ["empty", new Uint8Array(0)],
    ["empty lines", utf8("\n".repeat(5_000))],
  ] as const;

  test.each(hostile.flatMap(([what, bytes]) => fileNames.map((name) => [what, name, bytes] as const)))(
    "%s in %s",
    async (_what, name, bytes) => {
      const files = filesOf(bag);
      files.set(`data/${name}`, bytes);
      const report = await verifyEvidenceBag(await packed(files));
      expect(report.verdict).toBe("changed");
      expect(report.findings.length).toBeGreaterThan(0);
    },
  );
});

test("bytes changed anywhere in the file never throw; what still is sound says what the whole one said", async () => {
  const random = createRandom("evidence/bytes");
  const whole = await verifyEvidenceBag(bag);
  for (let number = 1; number <= 300; number++) {
    const copy = Uint8Array.from(bag);
    const at = Math.floor(random.uniform() * copy.length);
    copy[at] = (copy[at]! + 1 + Math.floor(random.uniform() * 255)) % 256;
    const report = await verifyEvidenceBag(copy);
    // times and attributes of an archive's members mean nothing: there the content is the same
    if (report.isSound) expect(report, `case ${number}, byte ${at}`).toEqual(whole);
    else expect(report.findings.length, `case ${number}, byte ${at}`).toBeGreaterThan(0);
  }
});
