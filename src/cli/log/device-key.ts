import { randomBytes } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { fail, type Result } from "#core";
import { type Signer, signerFromSeed } from "#records";
import { sentenceOf } from "#text";
import type { LogPlace } from "./open-log.ts";

const KEY_FILE = "device.key";

/** Where this user's programs keep what is not for others. */
const configFolder = (): string =>
  join(process.env["XDG_CONFIG_HOME"] ?? join(homedir(), ".config"), "toeline");

/**
 * The key with which this machine signs what it writes into a log: in the data folder, or for a database beside the settings of
 * this user. It is made at the first time and can be read by this user only.
 */
export async function deviceSigner({ data }: LogPlace): Promise<Result<Signer, string>> {
  const folder = data ?? configFolder();
  const file = join(folder, KEY_FILE);
  if (!existsSync(file)) {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    // fails if another process was quicker
    writeFileSync(file, `${randomBytes(32).toString("hex")}\n`, { flag: "wx", mode: 0o600 });
    chmodSync(file, 0o600);
  }
  const signer = await signerFromSeed(readFileSync(file, "utf8").trim());
  if (signer.ok) return signer;
  return fail(`${file} is no key of a device: ${sentenceOf(signer.error)}`);
}
