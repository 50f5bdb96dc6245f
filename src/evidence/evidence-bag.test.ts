import { describe, expect, test } from "vitest";
import { utf8 } from "#records";
import { evidenceOfJob, filesOf, headOf, OFFICE, packed } from "../../test/support/evidence.ts";
import { JOB, signerOf, unwrap } from "../../test/support/records.ts";
import { verifyEvidenceBag, verifyEvidenceFiles } from "./check/verify-evidence-bag.ts";
import { writeEvidenceBag } from "./write/write-evidence-bag.ts";

const input = await evidenceOfJob();
const bag = unwrap(await writeEvidenceBag(input));
const textIn = (name: string) => new TextDecoder().decode(filesOf(bag).get(name));
const codes = (issues: readonly { code: string }[]) => issues.map(({ code }) => code);

describe("a sound bag", () => {
  test("verifies, and says what is in it", async () => {
    const report = await verifyEvidenceBag(bag);
    expect(report.findings).toEqual([]);
    expect(report).toMatchObject({
      verdict: "sound",
      isSound: true,
      job: JOB,
      entries: input.entries.length,
    });
    expect(report.devices.map(({ name, isSound }) => [name, isSound]).sort()).toEqual([
      ["Tablet 1", true],
      ["Tablet 2", true],
      ["Tablet 3", true],
    ]);
    expect(report.heads).toMatchObject([
      { size: 12, fits: true },
      { size: input.entries.length, fits: true },
    ]);
    expect(report.seals).toMatchObject([
      { name: "Anna Muster", meaning: "taken by", about: "run/P1-1", fits: true },
      { name: "Anna Muster", meaning: "approved by", about: "report/R-1", fits: true },
    ]);
    expect(report.blobs).toEqual({ named: 2, missing: [], changed: [] });
  });

  test("is the same to the byte each time, whatever the order of heads and blobs", async () => {
    const again = await writeEvidenceBag({
      ...input,
      heads: input.heads.toReversed(),
      blobs: new Map([...input.blobs].reverse()),
    });
    expect(unwrap(again)).toEqual(bag);
  });

  test("fits what is known from outside, and says what still is not known", async () => {
    const [early, closing] = input.heads as [(typeof input.heads)[0], (typeof input.heads)[0]];
    const short = { size: early.size, root: early.root.slice(0, 16) };
    const known = await verifyEvidenceBag(bag, { knownHeads: [short], knownOfficeKey: OFFICE.publicKey });
    expect(known).toMatchObject({ verdict: "sound", knownHeads: [{ fits: true }] });
    expect(codes(known.notChecked)).toEqual(["evidence.after-last-known-head", "evidence.times-are-claims"]);
    const all = await verifyEvidenceBag(bag, { knownHeads: [closing], knownOfficeKey: OFFICE.publicKey });
    expect(codes(all.notChecked)).toEqual(["evidence.times-are-claims"]);
    const none = await verifyEvidenceBag(bag);
    expect(codes(none.notChecked)).toContain("evidence.office-key-not-known");
  });

  test("verifies as a folder too, and packed anew by another program", async () => {
    expect((await verifyEvidenceFiles(filesOf(bag))).verdict).toBe("sound");
    expect((await verifyEvidenceBag(await packed(filesOf(bag)))).verdict).toBe("sound");
  });

  test("RFC 8493: declaration, manifests, Payload-Oxum", () => {
    expect(textIn("bagit.txt")).toBe("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    const payload = [...filesOf(bag)].filter(([name]) => name.startsWith("data/"));
    const octets = payload.reduce((sum, [, bytes]) => sum + bytes.length, 0);
    expect(textIn("bag-info.txt").split("\n")).toContain(`Payload-Oxum: ${octets}.${payload.length}`);
    for (const line of textIn("manifest-sha256.txt").trimEnd().split("\n"))
      expect(line).toMatch(/^[0-9a-f]{64} {2}data\/\S+$/);
    expect(textIn("tagmanifest-sha256.txt")).toMatch(/ {2}manifest-sha256\.txt\n/);
  });
});

describe("what is not written", () => {
  test.each([
    ["no entries", { entries: [] }, "evidence.no-entries"],
    ["a head over all is missing", { heads: input.heads.slice(0, 1) }, "evidence.no-head-over-all"],
    ["an entry is left out", { entries: input.entries.slice(1) }, "records.head-mismatch"],
    ["the job is another", { job: "other" }, "evidence.other-job"],
    [
      "a file is not what its name says",
      { blobs: new Map([["a".repeat(64), utf8("x")]]) },
      "evidence.blob-changed",
    ],
  ])("%s", async (_what, change, code) => {
    const made = await writeEvidenceBag({ ...input, ...change });
    expect(made.ok ? [] : codes(made.error)).toContain(code);
  });
});

describe("what was changed beside the entries", () => {
  const changed = async (change: (files: ReturnType<typeof filesOf>) => void) => {
    const files = filesOf(bag);
    change(files);
    return verifyEvidenceBag(await packed(files));
  };
  const photo = [...input.blobs.keys()][0]!;

  test("a file of the entries is missing: named with its entry", async () => {
    const report = await changed((files) => files.delete(`data/blobs/${photo}`));
    const place = 1 + input.entries.findIndex((entry) => entry.kind === "photo");
    expect(report).toMatchObject({
      verdict: "unsettled",
      blobs: { missing: [photo] },
      firstBad: { place, kind: "photo", issue: { code: "evidence.blob-missing" } },
    });
  });

  test.each([
    ["the content of a file", `data/blobs/${photo}`, "evidence.blob-changed"],
    ["a file that nobody named", `data/blobs/${"b".repeat(64)}`, "evidence.stray-file"],
    ["a file beside", "data/more.txt", "evidence.stray-file"],
    ["the keys", "data/keys.json", "evidence.derived-differs"],
    ["the seals", "data/seals.jsonl", "evidence.derived-differs"],
    ["the ids", "data/ids.txt", "evidence.ids"],
    ["the heads", "data/heads.jsonl", "records.head-shape"],
    ["the declaration", "bagit.txt", "evidence.bag-version"],
    ["lines that are not ended", "data/entries.jsonl", "evidence.lines"],
  ])("%s", async (_what, name, code) => {
    const text = name.endsWith(".jsonl") && name !== "data/entries.jsonl" ? "{}\n" : "{}";
    const report = await changed((files) => files.set(name, utf8(text)));
    expect(report.verdict).toBe("changed");
    expect(codes(report.findings)).toContain(code);
  });

  test("damage on the way, with the manifests left alone", async () => {
    const files = filesOf(bag);
    files.set("README.txt", utf8("all is well"));
    const report = await verifyEvidenceFiles(files);
    expect(report.findings).toMatchObject([
      { code: "evidence.manifest-differs", place: { file: "README.txt" } },
    ]);
  });

  test("a line written in another form", async () => {
    const report = await changed((files) => {
      const lines = textIn("data/entries.jsonl").split("\n");
      files.set("data/entries.jsonl", utf8(lines.with(4, ` ${lines[4]}`).join("\n")));
    });
    expect(report.firstBad).toMatchObject({ place: 5, upTo: 5, issue: { code: "evidence.line-form" } });
  });
});

describe("what only the outside shows", () => {
  const [early] = input.heads as [(typeof input.heads)[0]];

  test("an older bag, or one cut to an older head, is sound in itself", async () => {
    const cut = unwrap(
      await writeEvidenceBag({
        ...input,
        entries: input.entries.slice(0, early.size),
        heads: [early],
        blobs: new Map(),
      }),
    );
    const closing = input.heads[1]!;
    expect((await verifyEvidenceBag(cut)).verdict).toBe("sound");
    expect(await verifyEvidenceBag(cut, { knownHeads: [closing] })).toMatchObject({
      verdict: "changed",
      firstBad: { upTo: early.size + 1 },
    });
  });

  test("a story told anew with all keys forged is sound in itself; the office's key or a head shows it", async () => {
    const story = await evidenceOfJob({ devices: [11, 12, 13], office: await signerOf(666) });
    const forged = unwrap(await writeEvidenceBag(story));
    expect((await verifyEvidenceBag(forged)).verdict).toBe("sound");
    const byKey = await verifyEvidenceBag(forged, { knownOfficeKey: OFFICE.publicKey });
    expect(byKey.verdict).toBe("changed");
    expect(codes(byKey.findings)).toContain("evidence.head-other-key");
    const byHead = await verifyEvidenceBag(forged, { knownHeads: [early] });
    expect(byHead).toMatchObject({ verdict: "changed", firstBad: { place: 1, upTo: early.size } });
  });

  test("an office that leaves out a device fits itself, unless others have seen its entries; a head kept before shows it", async () => {
    const [, witnessed] = [...new Set(input.entries.map((entry) => entry.device))];
    const entries = input.entries.filter(({ device }) => device !== witnessed);
    const heads = [
      await headOf(
        entries.map(({ id }) => id),
        "2026-03-03T08:00:00Z",
      ),
    ];
    const bagWithout = unwrap(await writeEvidenceBag({ ...input, entries, heads }));
    const report = await verifyEvidenceBag(bagWithout, { knownOfficeKey: OFFICE.publicKey });
    expect(report.isSound).toBe(false);
    expect(codes(report.findings)).toContain("records.chain-gap");
    expect((await verifyEvidenceBag(bagWithout, { knownHeads: [early] })).verdict).toBe("changed");
  });
});
