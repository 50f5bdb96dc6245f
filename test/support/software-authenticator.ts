import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from "node:crypto";

type Value = number | string | Buffer | ReadonlyMap<number | string, Value>;

/** The few kinds of values that WebAuthn needs. Source: RFC 8949, section 3. */
function cbor(value: Value): Buffer {
  if (typeof value === "number") return value >= 0 ? head(0, value) : head(1, -1 - value);
  if (typeof value === "string")
    return Buffer.concat([head(3, Buffer.byteLength(value)), Buffer.from(value)]);
  if (Buffer.isBuffer(value)) return Buffer.concat([head(2, value.length), value]);
  const pairs = [...(value as ReadonlyMap<number | string, Value>)];
  return Buffer.concat([head(5, pairs.length), ...pairs.flatMap(([key, one]) => [cbor(key), cbor(one)])]);
}

function head(major: number, count: number): Buffer {
  if (count < 24) return Buffer.from([(major << 5) | count]);
  return count < 256
    ? Buffer.from([(major << 5) | 24, count])
    : Buffer.from([(major << 5) | 25, count >> 8, count & 255]);
}

const sha256 = (bytes: Buffer | string): Buffer => createHash("sha256").update(bytes).digest();
const text = (bytes: Buffer): string => bytes.toString("base64url");

/** User present, user verified, credential data included. Source: W3C Web Authentication Level 2, section 6.1. */
const PRESENT = 0x01;
const VERIFIED = 0x04;
const WITH_CREDENTIAL = 0x40;

/** What a test may do wrong on purpose. */
export interface Misuse {
  readonly origin?: string;
  readonly rpId?: string;
  readonly isVerified?: boolean;
  readonly counter?: number;
}

/** An authenticator made of software: one passkey of the kind ES256. */
export class SoftwareAuthenticator {
  readonly id = randomBytes(32);
  readonly #key: KeyObject;
  readonly #public: KeyObject;
  readonly #origin: string;
  readonly #rpId: string;
  #counter = 0;

  constructor(origin: string) {
    const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
    [this.#key, this.#public] = [privateKey, publicKey];
    this.#origin = origin;
    this.#rpId = new URL(origin).hostname;
  }

  /** Answers navigator.credentials.create(). */
  register(challenge: string, misuse: Misuse = {}) {
    const { x = "", y = "" } = this.#public.export({ format: "jwk" });
    const key = cbor(
      new Map<number, Value>([
        [1, 2],
        [3, -7],
        [-1, 1],
        [-2, Buffer.from(x, "base64url")],
        [-3, Buffer.from(y, "base64url")],
      ]),
    );
    const length = Buffer.from([0, this.id.length]);
    const credential = Buffer.concat([Buffer.alloc(16), length, this.id, key]);
    const authData = Buffer.concat([this.#head(WITH_CREDENTIAL, misuse), credential]);
    const attestation = cbor(
      new Map<string, Value>([
        ["fmt", "none"],
        ["attStmt", new Map()],
        ["authData", authData],
      ]),
    );
    return this.#answer({
      clientDataJSON: text(this.#clientData("webauthn.create", challenge, misuse)),
      attestationObject: text(attestation),
      transports: ["internal"],
    });
  }

  /** Answers navigator.credentials.get(). */
  show(challenge: string, misuse: Misuse = {}) {
    const clientData = this.#clientData("webauthn.get", challenge, misuse);
    this.#counter++;
    const authData = this.#head(0, misuse);
    const signature = sign("sha256", Buffer.concat([authData, sha256(clientData)]), this.#key);
    return this.#answer({
      clientDataJSON: text(clientData),
      authenticatorData: text(authData),
      signature: text(signature),
    });
  }

  #answer<T>(response: T) {
    const id = text(this.id);
    return { id, rawId: id, type: "public-key", clientExtensionResults: {}, response };
  }

  #clientData(type: string, challenge: string, { origin = this.#origin }: Misuse): Buffer {
    return Buffer.from(JSON.stringify({ type, challenge, origin, crossOrigin: false }));
  }

  #head(more: number, { rpId = this.#rpId, isVerified = true, counter = this.#counter }: Misuse): Buffer {
    const count = Buffer.alloc(4);
    count.writeUInt32BE(counter);
    const flags = PRESENT | (isVerified ? VERIFIED : 0) | more;
    return Buffer.concat([sha256(rpId), Buffer.from([flags]), count]);
  }
}
