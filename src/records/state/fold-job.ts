import { causalOrder, type OrderedEntry } from "../chain/causal-order.ts";
import { type Chains, type DeviceChain, walkChains } from "../chain/walk-chains.ts";
import type { Entry } from "../entry/entry.ts";
import type { Effect } from "../kinds/kind.ts";
import { kindOf } from "../kinds/registry.ts";
import type { DeviceState, JobState, ListItem, ThingState, UnreadEntry } from "./job-state.ts";
import { settleField, type Write, writtenBy } from "./settle-field.ts";

/**
 * The state of a job from its entries: a pure function of the set. The order of arrival, repeats and the route of an entry
 * make no difference; no clock decides anything.
 *
 * Entries behind a gap or a fork of their device's chain do not count yet and are shown as waiting. A field that was written by
 * people who did not know of each other keeps all their values. Entries that this version cannot read are named.
 *
 * @param entries of one job, each already checked by itself (`checkEntry`).
 */
export function foldJob(entries: Iterable<Entry>): JobState {
  return foldChains(walkChains(entries));
}

/** The same from chains that were already walked. */
export function foldChains(chains: Chains): JobState {
  const things = new Map<string, OpenThing>();
  const unread: UnreadEntry[] = [];
  for (const ordered of causalOrder(chains)) {
    const effects = effectsOf(ordered.entry);
    if (typeof effects === "string") {
      const { kind, revision } = ordered.entry;
      unread.push({ kind, revision, code: effects, by: writtenBy(ordered.entry) });
    } else for (const effect of effects) apply(effect, ordered, things);
  }
  const closed = record([...things].map(([key, thing]) => [key, closeThing(thing)]));
  const devices = record([...chains].map(([device, chain]) => [device, deviceState(chain)]));
  return {
    things: closed,
    devices,
    unread,
    conflicts: Object.entries(closed).flatMap(([thing, { fields }]) =>
      Object.entries(fields)
        .filter(([, values]) => values.length > 1)
        .map(([field]) => ({ thing, field })),
    ),
    isComplete: unread.length === 0 && Object.values(devices).every(isSettled),
  };
}

/** What an entry does, or the code of why it cannot be read. */
function effectsOf(entry: Entry): readonly Effect[] | string {
  const kind = kindOf(entry.kind);
  if (kind === undefined) return "records.kind-unknown";
  if (entry.revision > kind.revision) return "records.kind-newer";
  const read = kind.read(entry.body);
  return read.ok ? read.value : "records.body-shape";
}

interface OpenThing {
  readonly writes: Map<string, Write[]>;
  readonly lists: Map<string, ListItem[]>;
  readonly entries: string[];
}

function apply(effect: Effect, from: OrderedEntry, things: Map<string, OpenThing>): void {
  const thing: OpenThing = things.get(effect.thing) ?? { writes: new Map(), lists: new Map(), entries: [] };
  things.set(effect.thing, thing);
  if (thing.entries.at(-1) !== from.entry.id) thing.entries.push(from.entry.id);
  if (effect.does === "set") {
    const writes = thing.writes.get(effect.field) ?? [];
    thing.writes.set(effect.field, writes);
    writes.push({ from, value: effect.value });
  } else {
    const list = thing.lists.get(effect.list) ?? [];
    thing.lists.set(effect.list, list);
    list.push({ kind: from.entry.kind, value: effect.value, by: writtenBy(from.entry) });
  }
}

const closeThing = ({ writes, lists, entries }: OpenThing): ThingState => ({
  fields: record([...writes].map(([field, all]) => [field, settleField(all)])),
  lists: record([...lists]),
  entries,
});

function deviceState(chain: DeviceChain): DeviceState {
  const { followed, highest, missing, waiting, abandoned, passedOver, forks, contradicted, stop } = chain;
  return {
    followed: followed.length,
    reached: followed.at(-1)?.sequence ?? 0,
    highest,
    missing,
    waiting: waiting.length,
    abandoned: abandoned.length,
    passedOver,
    forks,
    contradicted,
    ...(stop === undefined ? {} : { stoppedAt: { sequence: stop.sequence, reason: stop.reason } }),
  };
}

const isSettled = (device: DeviceState): boolean =>
  device.highest === device.reached &&
  device.missing.length === 0 &&
  device.abandoned === 0 &&
  device.contradicted.length === 0;

/** An object with its keys in order, so that two folds of one set print alike. Keys come from outside: none is inherited. */
function record<T>(pairs: readonly (readonly [string, T])[]): Readonly<Record<string, T>> {
  const made: Record<string, T> = Object.create(null) as Record<string, T>;
  for (const [key, value] of [...pairs].sort(([a], [b]) => (a < b ? -1 : 1))) made[key] = value;
  return made;
}
