import { createHash, randomBytes, randomUUID } from "node:crypto";

const SECRET_BYTES = 32;

/** A secret that nobody can guess: 256 bits as 43 characters. Only `hashOf` of it is kept. */
export const newSecret = (): string => randomBytes(SECRET_BYTES).toString("base64url");

/** A name for something, not a secret. */
export const newId = (): string => randomUUID();

/** SHA-256, hexadecimal. Enough for secrets of `newSecret`; what people make up goes through `hashPassword`. */
export const hashOf = (secret: string): string => createHash("sha256").update(secret).digest("hex");
