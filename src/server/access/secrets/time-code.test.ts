import { describe, expect, test } from "vitest";
import { base32FromBytes, bytesFromBase32 } from "./base32.ts";
import { newRecoveryCode, recoveryCodeHash } from "./recovery-code.ts";
import { newTimeSecret, stepOfCode, timeCode } from "./time-code.ts";

const SECRET = new TextEncoder().encode("12345678901234567890");
const BASE32 = base32FromBytes(SECRET);
const STEP_MS = 30_000;

// RFC 6238, appendix B, the rows of SHA1: time in seconds, code of eight digits
test.each([
  [59, "94287082"],
  [1111111109, "07081804"],
  [1111111111, "14050471"],
  [1234567890, "89005924"],
  [2000000000, "69279037"],
  [20000000000, "65353130"],
])("RFC 6238, appendix B: %i s", (seconds, code) => {
  expect(timeCode(SECRET, Math.floor(seconds / 30), 8)).toBe(code);
});

// RFC 4226, appendix D: count, code of six digits
test.each(
  ["755224", "287082", "359152", "969429", "338314", "254676", "287922", "162583", "399871", "520489"].map(
    (code, count) => [count, code] as const,
  ),
)("RFC 4226, appendix D: count %i", (count, code) => {
  expect(timeCode(SECRET, count)).toBe(code);
});

// RFC 4648, section 10, without the padding
test.each([
  ["", ""],
  ["f", "MY"],
  ["fo", "MZXQ"],
  ["foo", "MZXW6"],
  ["foob", "MZXW6YQ"],
  ["fooba", "MZXW6YTB"],
  ["foobar", "MZXW6YTBOI"],
])("RFC 4648, section 10: %j", (plain, coded) => {
  expect(base32FromBytes(Buffer.from(plain))).toBe(coded);
  expect(Buffer.from(bytesFromBase32(coded)).toString()).toBe(plain);
});

describe("a code is taken", () => {
  const step = 1000;
  const codeOf = (at: number) => timeCode(SECRET, at);
  test("one step early and one late, but not two", () => {
    for (const off of [-2, -1, 0, 1, 2])
      expect(stepOfCode(BASE32, codeOf(step + off), step * STEP_MS, 0)).toBe(
        Math.abs(off) < 2 ? step + off : undefined,
      );
  });
  test("once, and none from before it", () => {
    expect(stepOfCode(BASE32, codeOf(step), step * STEP_MS, step)).toBeUndefined();
    expect(stepOfCode(BASE32, codeOf(step - 1), step * STEP_MS, step)).toBeUndefined();
    expect(stepOfCode(BASE32, codeOf(step + 1), step * STEP_MS, step)).toBe(step + 1);
  });
  test("only whole", () => {
    for (const code of ["", "0", codeOf(step).slice(1), `${codeOf(step)}0`])
      expect(stepOfCode(BASE32, code, step * STEP_MS, 0)).toBeUndefined();
  });
});

test("secrets and recovery codes have the length they should, and how a code is typed does not matter", () => {
  expect(bytesFromBase32(newTimeSecret())).toHaveLength(20);
  const code = newRecoveryCode();
  expect(code).toMatch(/^(?:[a-z2-7]{4}-){3}[a-z2-7]{4}$/);
  expect(recoveryCodeHash(` ${code.toUpperCase().replaceAll("-", " ")} `)).toBe(recoveryCodeHash(code));
  expect(newRecoveryCode()).not.toBe(code);
});
