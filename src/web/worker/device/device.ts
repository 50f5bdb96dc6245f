import { fail, type Issue, ok, type Result } from "#core";
import { type EntryClock, generateKeyPair, type KeyPair, type Signer, signerFromKeyPair } from "#records";
import { error } from "../issue.ts";
import { type KeptThings, openKeptThings } from "./kept-things.ts";

const KEY = "key-pair";
const SESSION = "session";

/** This browser as a writer: its key, which cannot be read out, and its clocks. */
export interface Device {
  /** makes the key when it is first asked for; its public half is the device's name in every log */
  signer(): Promise<Result<Signer, Issue>>;
  /** undefined before anything was written */
  publicKey(): Promise<string | undefined>;
  clock(): EntryClock;
}

/**
 * Opens the device of this browser and counts the session.
 *
 * Errors: desk.nothing-kept.
 */
export async function openDevice(): Promise<Result<Device, Issue>> {
  const kept = await openKeptThings();
  if (!kept.ok) return fail(error("desk.nothing-kept", { found: kept.error }));
  const before = await kept.value.get(SESSION);
  const session = before.ok && typeof before.value === "number" ? before.value + 1 : 1;
  const counted = await kept.value.put(SESSION, session);
  if (!counted.ok) return fail(error("desk.nothing-kept", { found: counted.error }));
  return ok(deviceWith(kept.value, session));
}

function deviceWith(kept: KeptThings, session: number): Device {
  const held: { signer: Promise<Result<Signer, Issue>> | undefined } = { signer: undefined };
  const publicKey = async () => {
    const pair = await keptPair(kept);
    const signer = pair === undefined ? undefined : await signerFromKeyPair(pair);
    return signer?.ok ? signer.value.publicKey : undefined;
  };
  return {
    signer: () => {
      held.signer ??= signerOf(kept);
      return held.signer;
    },
    publicKey,
    clock: () => ({ wall: wallTime(new Date()), monotonic_ms: Math.round(performance.now()), session }),
  };
}

async function signerOf(kept: KeptThings): Promise<Result<Signer, Issue>> {
  const known = await keptPair(kept);
  if (known !== undefined) return signerFromKeyPair(known);
  const made = await generateKeyPair();
  if (!made.ok) return made;
  const put = await kept.put(KEY, made.value);
  // a key that is not kept would begin a new device with every start
  return put.ok ? signerFromKeyPair(made.value) : fail(error("desk.nothing-kept", { found: put.error }));
}

async function keptPair(kept: KeptThings): Promise<KeyPair | undefined> {
  const read = await kept.get(KEY);
  return read.ok ? (read.value as KeyPair | undefined) : undefined;
}

/** ISO 8601 with the offset of this device. */
export function wallTime(date: Date): string {
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, -1);
  const two = (n: number) => String(Math.floor(Math.abs(n))).padStart(2, "0");
  return `${local}${offset < 0 ? "-" : "+"}${two(offset / 60)}:${two(offset % 60)}`;
}
