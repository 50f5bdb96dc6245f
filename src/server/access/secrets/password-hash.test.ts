import { expect, test } from "vitest";
import { unwrap } from "../../../../test/support/records.ts";
import { hashPassword, verifyPassword } from "./password-hash.ts";
import { Turnstile } from "./turnstile.ts";

const text = (hex: string) => Buffer.from(hex, "hex").toString("base64").replaceAll("=", "");

// RFC 7914, section 12, third vector; its values from memory, which the match confirms
const RFC_7914 = `$scrypt$ln=14,r=8,p=1$${text(Buffer.from("SodiumChloride").toString("hex"))}$${text(
  "7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2" +
    "d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887",
)}`;

test("agrees with the published value of scrypt", async () => {
  expect(unwrap(await verifyPassword("pleaseletmein", RFC_7914))).toBe(true);
  expect(unwrap(await verifyPassword("pleaseletmeim", RFC_7914))).toBe(false);
});

test("a hash says how it was made, differs each time, and knows its password in every Unicode form", async () => {
  const [first, second] = [
    unwrap(await hashPassword("Schlüssel-Größe")),
    unwrap(await hashPassword("Schlüssel-Größe")),
  ];
  expect(first).toMatch(/^\$scrypt\$ln=17,r=8,p=1\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}$/);
  expect(second).not.toBe(first);
  expect(unwrap(await verifyPassword("Schlüssel-Größe".normalize("NFD"), first))).toBe(true);
  expect(unwrap(await verifyPassword("schlüssel-größe", first))).toBe(false);
});

test("without a hash no password is right", async () => {
  for (const kept of [undefined, "", "$argon2id$v=19$m=1$YQ$YQ"])
    expect(unwrap(await verifyPassword("", kept))).toBe(false);
});

test("only so many work at once, the others wait in their order, and a queue that is full says so", async () => {
  const turnstile = new Turnstile(2, 3);
  const begun: number[] = [];
  const ends: (() => void)[] = [];
  const answers = Array.from({ length: 6 }, (_, i) =>
    turnstile.through(() => {
      begun.push(i);
      return new Promise<number>((resolve) => ends.push(() => resolve(i)));
    }),
  );
  const refused = await answers[5];
  expect(refused?.ok === false && refused.error.code).toBe("access.busy");
  for (let i = 0; i < 5; i++) {
    expect(begun).toHaveLength(Math.min(5, i + 2));
    ends[i]?.();
    expect(unwrap((await answers[i])!)).toBe(i);
  }
  expect(begun).toEqual([0, 1, 2, 3, 4]);
});
