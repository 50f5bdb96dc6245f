import { randomBytes } from "node:crypto";
import { base32FromBytes } from "./base32.ts";
import { hashOf } from "./random.ts";

/** How many somebody gets; each works once. */
export const RECOVERY_CODES = 10;
/** 80 bits: guessing is out of reach even for somebody who has the hashes. */
const CODE_BYTES = 10;

/** A code to write on paper: four groups of four. */
export const newRecoveryCode = (): string =>
  (base32FromBytes(randomBytes(CODE_BYTES)).toLowerCase().match(/.{4}/g) ?? []).join("-");

/** As it is kept, however it was typed: dashes, spaces and capitals do not matter. */
export const recoveryCodeHash = (typed: string): string =>
  hashOf(typed.toLowerCase().replaceAll(/[^a-z2-7]/g, ""));
