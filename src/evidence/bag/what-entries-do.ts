import { type Effect, type Entry, kindOf, namedBlobs, type Seal, thingKey } from "#records";

/** An entry and where it stands in the order of arrival, from 1. */
export interface PlacedEntry {
  readonly place: number;
  readonly entry: Entry;
}

/** A sign-off, as its entry holds it. */
export interface PlacedSeal extends PlacedEntry {
  readonly seal: Seal;
}

/** A key and the entry that announced it. */
export interface AnnouncedKey {
  readonly public_key: string;
  /** id and place of the announcing entry */
  readonly entry: string;
  readonly place: number;
  /** name of the device or of the person */
  readonly name: string;
}

export interface PersonKey extends AnnouncedKey {
  readonly person: string;
  /** device that wrote the announcement */
  readonly device: string;
}

/** What the entries of a job say that a bag shows besides: seals, keys, files, and which entries are about what. */
export interface WhatEntriesDo {
  readonly seals: readonly PlacedSeal[];
  readonly devices: readonly AnnouncedKey[];
  readonly people: readonly PersonKey[];
  /** by hash of the file, the place of the first entry that names it */
  readonly blobs: ReadonlyMap<string, number>;
  /** by thing, ids of the entries about it */
  readonly about: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Gathers what sound entries do. A pure function of the entries in their order of arrival. */
export function whatEntriesDo(placed: readonly PlacedEntry[]): WhatEntriesDo {
  const seals: PlacedSeal[] = [];
  const devices = new Map<string, AnnouncedKey>();
  const people: PersonKey[] = [];
  const blobs = new Map<string, number>();
  const about = new Map<string, Set<string>>();
  for (const { place, entry } of placed) {
    for (const blob of namedBlobs(entry)) if (!blobs.has(blob)) blobs.set(blob, place);
    const by = { entry: entry.id, place, name: nameIn(entry) };
    for (const effect of effectsOf(entry)) {
      const ids = about.get(effect.thing) ?? new Set<string>();
      about.set(effect.thing, ids.add(entry.id));
      if (effect.does === "add" && effect.list === "seals")
        seals.push({ place, entry, seal: effect.value as unknown as Seal });
      if (effect.does === "add" && effect.list === "keys") {
        const { public_key } = effect.value as { public_key: string };
        people.push({ ...by, public_key, person: String(entry.body["person"]), device: entry.device });
      }
      // a chain begins with the device's word on itself; one that announces another key has not announced its own
      if (entry.sequence === 1 && effect.thing === thingKey("device", entry.device))
        devices.set(entry.device, { ...by, public_key: entry.device });
    }
  }
  return { seals, devices: [...devices.values()], people, blobs, about };
}

const nameIn = ({ body }: Entry): string => (typeof body["name"] === "string" ? body["name"] : "");

function effectsOf(entry: Entry): readonly Effect[] {
  const read = kindOf(entry.kind)?.read(entry.body);
  return read?.ok === true ? read.value : [];
}
