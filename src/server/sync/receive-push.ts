import { type Issue, ok, type Result } from "#core";
import {
  answerPush,
  type Entry,
  type PushAnswer,
  type PushRequest,
  type Quarantined,
  type Received,
  receiveBatch,
} from "#records";
import type { Person } from "../access/person.ts";
import { type Judge, judgeFor } from "./judge-entries.ts";
import type { SyncParts } from "./sync-parts.ts";

/**
 * Takes a batch into the log and answers for it once it is written: every entry is judged by itself, the sound and allowed ones go
 * in together in one transaction, the others are kept aside as they came.
 *
 * Errors: those of the store.
 */
export async function receivePush(
  { office, verifier, chainEnds }: SyncParts,
  sender: Person,
  { job, entries }: PushRequest,
): Promise<Result<PushAnswer, Issue>> {
  const { store, access, era } = office;
  const at = office.clock().toISOString();
  const sound = await receiveBatch(job, entries, verifier);
  const allowed = await keepAllowed(sound, entries, judgeFor(access, sender, job));
  const aside = await store.keepAside(job, allowed.quarantined, at);
  if (!aside.ok) return aside;
  const appended = await store.append(job, allowed.sound, at);
  if (!appended.ok) return appended;
  for (const device of devicesOf(sender, allowed.sound)) await access.rememberDevice(sender, device);
  const ends = await chainEnds.after(job, allowed.sound);
  if (!ends.ok) return ends;
  if (appended.value.added > 0) office.announce(job);
  const held = new Set(appended.value.held);
  const written: Received = {
    sound: allowed.sound.filter((entry) => held.has(entry.id)),
    quarantined: [...allowed.quarantined, ...placed(appended.value.refused, entries)],
  };
  return ok(answerPush({ job, era }, written, ends.value));
}

async function keepAllowed(received: Received, batch: readonly unknown[], judge: Judge): Promise<Received> {
  const sound: Entry[] = [];
  const refused: Quarantined[] = [];
  for (const raw of received.sound) {
    const issue = await judge(raw);
    if (issue === undefined) sound.push(raw);
    else refused.push({ index: 0, raw, issue });
  }
  return { sound, quarantined: [...received.quarantined, ...placed(refused, batch)] };
}

/** With the places they have in the batch. A check hands an entry on as it came, so that it is found there again. */
function placed(refused: readonly Quarantined[], batch: readonly unknown[]): readonly Quarantined[] {
  if (refused.length === 0) return [];
  const places = new Map(batch.map((raw, index) => [raw, index]));
  return refused.map((one) => ({ ...one, index: places.get(one.raw) ?? one.index }));
}

/**
 * Whose a device is, is learned from what its person writes and sends. Who only sends what others wrote, a whole store for example,
 * does not come to own their devices.
 */
const devicesOf = (sender: Person, entries: readonly Entry[]): ReadonlySet<string> =>
  new Set(entries.filter((entry) => entry.author === sender.id).map((entry) => entry.device));
