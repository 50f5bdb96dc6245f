import { createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { base32FromBytes, bytesFromBase32 } from "./base32.ts";

const STEP_MS = 30_000;
/** Steps by which a clock may be off, each way. Source: RFC 6238, section 5.2. */
const OFF_BY = 1;
const DIGITS = 6;
/** As long as the hash. Source: RFC 4226, section 4, R6. */
const SECRET_BYTES = 20;

/** A secret for a program that shows codes, base32. */
export const newTimeSecret = (): string => base32FromBytes(randomBytes(SECRET_BYTES));

/**
 * The code of one time step.
 *
 * Source: RFC 4226, section 5.3, with the counter of RFC 6238, section 4.
 * Checked against: the test values of RFC 6238, appendix B.
 */
export function timeCode(secret: Uint8Array, step: number, digits: number = DIGITS): string {
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(step));
  const mac = createHmac("sha1", secret).update(counter).digest();
  const offset = mac.readUInt8(mac.length - 1) & 0x0f;
  const number = mac.readUInt32BE(offset) & 0x7fff_ffff;
  return String(number % 10 ** digits).padStart(digits, "0");
}

/**
 * The time step whose code it is; undefined if it is none of those around now.
 *
 * @param secret base32.
 * @param after last step whose code was taken: an older or the same one is not taken again.
 */
export function stepOfCode(secret: string, code: string, now: number, after: number): number | undefined {
  const key = bytesFromBase32(secret);
  const given = Buffer.from(code);
  const current = Math.floor(now / STEP_MS);
  for (let step = current - OFF_BY; step <= current + OFF_BY; step++) {
    const expected = Buffer.from(timeCode(key, step));
    const isSame = expected.length === given.length && timingSafeEqual(expected, given);
    if (isSame && step > after) return step;
  }
  return undefined;
}

/** What a QR code for an authenticator program holds. @param login as the program shows it. */
export const timeSecretAddress = (secret: string, login: string): string =>
  `otpauth://totp/Toeline:${encodeURIComponent(login)}?secret=${secret}&issuer=Toeline&algorithm=SHA1&digits=${DIGITS}&period=${STEP_MS / 1000}`;
