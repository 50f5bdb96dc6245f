import { fail, type Issue, ok, type Result } from "#core";
import { attemptLater } from "../attempt.ts";
import { error } from "../issue.ts";
import { utf8 } from "./hash.ts";
import { bytesFromHex, hexFromBytes, isHex32, isHex64 } from "./hex.ts";

const ALGORITHM = "Ed25519";

/** Something that signs with one key. The key itself never leaves the platform's key store. */
export interface Signer {
  /** Ed25519 public key, 32 bytes in hexadecimal; of a device it is the device's id */
  readonly publicKey: string;
  /** @returns the signature over the bytes, 64 bytes in hexadecimal */
  sign(bytes: Uint8Array<ArrayBuffer>): Promise<string>;
}

/** A key pair that the platform keeps; both halves can be put in a browser's database. */
export interface KeyPair {
  readonly publicKey: CryptoKey;
  readonly privateKey: CryptoKey;
}

/**
 * Makes a key pair whose private half cannot be read out.
 *
 * Errors: records.no-signatures, where the platform has no Ed25519.
 */
export async function generateKeyPair(): Promise<Result<KeyPair, Issue>> {
  const made = await attemptLater(() => crypto.subtle.generateKey(ALGORITHM, false, ["sign", "verify"]));
  if (!made.ok || !("privateKey" in made.value)) return fail(noSignatures(made));
  return ok(made.value);
}

/**
 * A signer for a key pair kept by the platform.
 *
 * Errors: records.no-signatures.
 */
export async function signerFromKeyPair(pair: KeyPair): Promise<Result<Signer, Issue>> {
  const raw = await attemptLater(() => crypto.subtle.exportKey("raw", pair.publicKey));
  if (!raw.ok) return fail(noSignatures(raw));
  return ok({
    publicKey: hexFromBytes(new Uint8Array(raw.value)),
    sign: async (bytes) =>
      hexFromBytes(new Uint8Array(await crypto.subtle.sign(ALGORITHM, pair.privateKey, bytes))),
  });
}

/** What stands before the 32 bytes of a private key in PKCS #8 (RFC 8410, section 7). */
const PKCS8_START = "302e020100300506032b657004220420";

/**
 * A signer from a private key given as its 32 bytes in hexadecimal: for servers that keep their key in a file, and for tests.
 *
 * Errors: records.key, records.no-signatures.
 * Source: RFC 8032, section 5.1.5; RFC 8410, section 7.
 * Checked against: test/published/rfc-8032
 */
export async function signerFromSeed(seed: string): Promise<Result<Signer, Issue>> {
  if (!isHex32(seed)) return fail(error("records.key", { expected: "64 hexadecimal digits" }));
  const pkcs8 = bytesFromHex(PKCS8_START + seed);
  const imported = await attemptLater(() =>
    crypto.subtle.importKey("pkcs8", pkcs8, ALGORITHM, true, ["sign"]),
  );
  if (!imported.ok) return fail(noSignatures(imported));
  const privateKey = imported.value;
  const jwk = await attemptLater(() => crypto.subtle.exportKey("jwk", privateKey));
  if (!jwk.ok || jwk.value.x === undefined) return fail(noSignatures(jwk));
  return ok({
    publicKey: hexFromBytes(bytesFromBase64Url(jwk.value.x)),
    sign: async (bytes) =>
      hexFromBytes(new Uint8Array(await crypto.subtle.sign(ALGORITHM, privateKey, bytes))),
  });
}

/** Remembers public keys that were made ready once; making one ready costs as much as a verification. */
export interface Verifier {
  /** Whether the signature over the bytes belongs to the key. Malformed keys and signatures are simply not valid. */
  verify(publicKey: string, bytes: Uint8Array<ArrayBuffer>, signature: string): Promise<boolean>;
}

/**
 * A verifier of Ed25519 signatures.
 *
 * Source: RFC 8032, section 5.1.7.
 * Checked against: test/published/rfc-8032
 */
export function createVerifier(): Verifier {
  const keys = new Map<string, Promise<Result<CryptoKey, string>>>();
  const keyOf = (publicKey: string) => {
    const known = keys.get(publicKey);
    if (known !== undefined) return known;
    const imported = attemptLater(() =>
      crypto.subtle.importKey("raw", bytesFromHex(publicKey), ALGORITHM, true, ["verify"]),
    );
    keys.set(publicKey, imported);
    return imported;
  };
  return {
    verify: async (publicKey, bytes, signature) => {
      if (!isHex32(publicKey) || !isHex64(signature)) return false;
      const key = await keyOf(publicKey);
      if (!key.ok) return false;
      const { value } = key;
      const checked = await attemptLater(() =>
        crypto.subtle.verify(ALGORITHM, value, bytesFromHex(signature), bytes),
      );
      return checked.ok && checked.value;
    },
  };
}

/**
 * Whether this platform can sign: makes a key and tries it. Asked once at start, so that nobody finds out beside the hole.
 */
export async function canSign(): Promise<boolean> {
  const pair = await generateKeyPair();
  if (!pair.ok) return false;
  const signer = await signerFromKeyPair(pair.value);
  if (!signer.ok) return false;
  const { publicKey, sign } = signer.value;
  const signature = await attemptLater(() => sign(utf8("toeline")));
  return signature.ok && createVerifier().verify(publicKey, utf8("toeline"), signature.value);
}

const noSignatures = (outcome: Result<unknown, string>): Issue =>
  error("records.no-signatures", { found: outcome.ok ? "no key pair" : outcome.error });

function bytesFromBase64Url(text: string): Uint8Array {
  const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}
