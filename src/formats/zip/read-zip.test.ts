import { deflateSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readZip } from "./read-zip.ts";
import { writeZip } from "./write-zip.ts";

const text = (words: string) => new TextEncoder().encode(words);
const codesOf = (bytes: Uint8Array, limits?: Parameters<typeof readZip>[2]) => {
  const read = readZip(bytes, "a.zip", limits);
  return read.ok ? [] : read.error.map(({ code }) => code);
};
const END = 22;

/** The bytes with others put over them from a place on. */
function patched(bytes: Uint8Array, at: number, ...values: number[]): Uint8Array {
  const copy = Uint8Array.from(bytes);
  copy.set(values, at);
  return copy;
}

const directoryOf = (bytes: Uint8Array) =>
  new DataView(bytes.buffer, bytes.byteOffset).getUint32(bytes.length - END + 16, true);
const u32 = (value: number) => [value & 255, (value >>> 8) & 255, (value >>> 16) & 255, value >>> 24];

test("reads what was written, packed, stored and empty, and is the same to the byte", () => {
  const files = new Map([
    ["b/long.txt", text("many words ".repeat(100))],
    ["a.bin", Uint8Array.from([1, 2, 3])],
    ["empty", new Uint8Array(0)],
    ["zeros", new Uint8Array(60_000)],
  ]);
  const zip = writeZip(files, (name) => name === "a.bin");
  const read = readZip(zip, "a.zip");
  expect(read.ok && [...read.value].sort()).toEqual([...files].sort());
  expect(writeZip(new Map([...files].reverse()), (name) => name === "a.bin")).toEqual(zip);
});

test("reads archives of another program", () => {
  const read = readZip(zipSync({ folder: { "x.txt": text("hello") } }), "a.zip");
  expect(read.ok && [...read.value.keys()]).toEqual(["folder/x.txt"]);
});

describe("refuses", () => {
  const plain = zipSync({ "a.txt": text("hello world") }, { level: 0 });
  const two = zipSync({ "a.txt": text("hello world"), "b.txt": text("hello again") }, { level: 0 });

  test.each([
    ["nothing", new Uint8Array(0)],
    ["a text", text("this is no archive")],
    ["one that was cut", plain.slice(0, -1)],
    ["one with bytes behind its end", Uint8Array.from([...plain, 0])],
    ["one whose directory lies outside", patched(plain, plain.length - END + 16, ...u32(0xfffffff0))],
    ["one whose member lies outside", patched(plain, directoryOf(plain) + 42, ...u32(9_999))],
    ["one whose names differ between directory and member", patched(plain, 30, "b".charCodeAt(0))],
  ])("%s", (_what, bytes) => {
    expect(codesOf(bytes)).toEqual(["formats.not-zip"]);
  });

  test.each([
    "../a",
    "a/../../b",
    "/etc/passwd",
    "C:/a",
    "a\\b",
    "a//b",
    "./a",
    "a\u0000b",
    "a\nb",
    "x".repeat(301),
  ])("the name %j", (name) => {
    expect(codesOf(zipSync({ [name]: text("x") }))).toEqual(["formats.zip-path"]);
  });

  test.each([
    ["a.txt", "A.TXT"],
    ["\u00e9", "e\u0301"],
  ])("%j beside %j: one file to some systems", (one, other) => {
    expect(codesOf(zipSync({ [one]: text("x"), [other]: text("y") }))).toEqual(["formats.zip-name-twice"]);
  });

  test("the same name twice", () => {
    let bytes: Uint8Array = two;
    // in the member and in the directory, b.txt becomes a.txt
    for (let at = 0; at < bytes.length - 5; at++)
      if (new TextDecoder().decode(bytes.slice(at, at + 5)) === "b.txt") bytes = patched(bytes, at, 97);
    expect(codesOf(bytes)).toEqual(["formats.zip-name-twice"]);
  });

  test("members that share their bytes", () => {
    // the first member claims to reach over the second one
    const directory = directoryOf(two);
    const longer = patched(patched(two, directory + 20, ...u32(30)), directory + 24, ...u32(30));
    expect(codesOf(longer)).toEqual(["formats.zip-overlap"]);
  });

  test("a symbolic link", () => {
    const link = zipSync({ link: [text("/etc/passwd"), { os: 3, attrs: 0o120777 << 16 }] });
    expect(codesOf(link)).toEqual(["formats.zip-link"]);
  });

  test.each([
    ["encrypted", 8, 1],
    ["packed in an unknown way", 10, 99],
  ])("a file that is %s", (_what, at, value) => {
    expect(codesOf(patched(plain, directoryOf(plain) + Number(at), Number(value)))).toEqual([
      "formats.zip-packing",
    ]);
  });

  test("a file whose content was changed", () => {
    expect(codesOf(patched(plain, 36, "X".charCodeAt(0)))).toEqual(["formats.zip-damaged"]);
  });

  test("what says that it swells beyond the limit, before anything is unpacked", () => {
    const bomb = zipSync({ zeros: new Uint8Array(5_000_000) }, { level: 9 });
    expect(bomb.length).toBeLessThan(50_000);
    expect(codesOf(bomb)).toEqual(["formats.zip-swells"]);
    expect(codesOf(bomb, { bytes: 1e9, swelling: 2000, files: 10 })).toEqual([]);
    expect(codesOf(two, { bytes: 1e9, swelling: 100, files: 1 })).toEqual(["formats.zip-swells"]);
  });

  test("what says that it is small and swells all the same", () => {
    const bomb = zipSync({ zeros: new Uint8Array(5_000_000) }, { level: 9 });
    expect(deflateSync(new Uint8Array(5_000_000)).length).toBeLessThan(10_000);
    expect(codesOf(patched(bomb, directoryOf(bomb) + 24, ...u32(1_000)))).toEqual(["formats.zip-damaged"]);
  });
});
