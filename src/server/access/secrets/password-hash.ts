import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from "node:crypto";
import type { Issue, Result } from "#core";
import { Turnstile } from "./turnstile.ts";

/** Source: OWASP Password Storage Cheat Sheet, scrypt: at least N = 2^17, r = 8, p = 1. */
const LOG_N = 17;
const BLOCK_SIZE = 8;
const PARALLEL = 1;
const HASH_BYTES = 32;
const SALT_BYTES = 16;
/** scrypt at N = 2^17, r = 8 works in 128 MiB. */
const MAX_MEMORY = 256 * 1024 * 1024;

/** Each hash holds a thread and 128 MiB for about half a second: more at once would starve everything else. */
const AT_ONCE = 2;
const MAY_WAIT = 32;
const turnstile = new Turnstile(AT_ONCE, MAY_WAIT);

const FORM = /^\$scrypt\$ln=(\d{1,2}),r=(\d{1,2}),p=(\d{1,2})\$([A-Za-z0-9+/]+)\$([A-Za-z0-9+/]+)$/;

/**
 * Hashes a password for keeping, as a text that says how it was made, so that the way can change while old ones stay readable.
 *
 * Errors: access.busy.
 */
export function hashPassword(password: string): Promise<Result<string, Issue>> {
  const salt = randomBytes(SALT_BYTES);
  return turnstile.through(async () => {
    const hash = await derive(password, salt, HASH_BYTES, { N: 2 ** LOG_N, r: BLOCK_SIZE, p: PARALLEL });
    return `$scrypt$ln=${LOG_N},r=${BLOCK_SIZE},p=${PARALLEL}$${unpadded(salt)}$${unpadded(hash)}`;
  });
}

/**
 * Whether a password is the one that was hashed. Without a hash, because there is no such account, it takes as long as with one
 * and is never right.
 *
 * Errors: access.busy.
 */
export function verifyPassword(password: string, kept: string | undefined): Promise<Result<boolean, Issue>> {
  const [, logN, r, p, salt = "", hash = ""] = FORM.exec(kept ?? "") ?? [];
  const isReal = logN !== undefined;
  const options = isReal
    ? { N: 2 ** Number(logN), r: Number(r), p: Number(p) }
    : { N: 2 ** LOG_N, r: BLOCK_SIZE, p: PARALLEL };
  const expected = isReal ? Buffer.from(hash, "base64") : Buffer.alloc(HASH_BYTES);
  const salted = isReal ? Buffer.from(salt, "base64") : Buffer.alloc(SALT_BYTES);
  return turnstile.through(async () => {
    const found = await derive(password, salted, expected.length, options);
    return timingSafeEqual(found, expected) && isReal;
  });
}

/** The same password typed on another keyboard may come in another Unicode form. */
const derive = (password: string, salt: Buffer, length: number, options: ScryptOptions): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    scrypt(password.normalize("NFKC"), salt, length, { ...options, maxmem: MAX_MEMORY }, (failed, key) =>
      failed === null ? resolve(key) : reject(failed),
    );
  });

const unpadded = (bytes: Buffer): string => bytes.toString("base64").replaceAll("=", "");
