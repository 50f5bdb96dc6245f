import { describe, expect, test } from "vitest";
import published from "../../../test/published/rfc-8032/case.json" with { type: "json" };
import { utf8 } from "./hash.ts";
import { bytesFromHex } from "./hex.ts";
import { canSign, createVerifier, generateKeyPair, signerFromKeyPair, signerFromSeed } from "./keys.ts";

const verifier = createVerifier();

describe("signatures", () => {
  test.each(published.vectors)("RFC 8032 section 7.1: key $pub", async ({ seed, pub, msg, sig }) => {
    const signer = await signerFromSeed(seed);
    if (!signer.ok) throw new Error(signer.error.code);
    expect(signer.value.publicKey).toBe(pub);
    expect(await signer.value.sign(bytesFromHex(msg))).toBe(sig);
    expect(await verifier.verify(pub, bytesFromHex(msg), sig)).toBe(true);
    expect(await verifier.verify(pub, bytesFromHex(`${msg}00`), sig)).toBe(false);
    for (let at = 0; at < 128; at += 9) {
      const digit = sig[at] === "0" ? "1" : "0";
      const changed = sig.slice(0, at) + digit + sig.slice(at + 1);
      expect(await verifier.verify(pub, bytesFromHex(msg), changed), `digit ${at}`).toBe(false);
    }
  });

  test("a key that the platform keeps signs, and its private half cannot be read out", async () => {
    const pair = await generateKeyPair();
    if (!pair.ok) throw new Error(pair.error.code);
    const signer = await signerFromKeyPair(pair.value);
    if (!signer.ok) throw new Error(signer.error.code);
    const signature = await signer.value.sign(utf8("hold"));
    expect(await verifier.verify(signer.value.publicKey, utf8("hold"), signature)).toBe(true);
    expect(await verifier.verify(signer.value.publicKey, utf8("held"), signature)).toBe(false);
    expect(pair.value.privateKey.extractable).toBe(false);
    await expect(crypto.subtle.exportKey("pkcs8", pair.value.privateKey)).rejects.toThrow();
  });

  test("malformed keys and signatures are not valid, and nothing is thrown", async () => {
    const [first] = published.vectors;
    for (const key of ["", "zz", first!.pub.slice(2), first!.pub.toUpperCase(), "f".repeat(64)])
      expect(await verifier.verify(key, utf8(""), first!.sig), key).toBe(false);
    for (const signature of ["", "00", first!.sig.slice(2), `${first!.sig}00`])
      expect(await verifier.verify(first!.pub, utf8(""), signature), signature).toBe(false);
    expect(await signerFromSeed("abc")).toMatchObject({ ok: false, error: { code: "records.key" } });
  });

  test("this platform can sign", async () => {
    expect(await canSign()).toBe(true);
  });
});
