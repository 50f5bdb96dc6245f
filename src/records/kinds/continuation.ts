import { z } from "zod";
import type { Entry } from "../entry/entry.ts";
import { hash, prose } from "./basics.ts";
import { addTo, defineKind, thingKey } from "./kind.ts";

const schema = z.looseObject({
  device: hash,
  sequence: z.number().int().min(1),
  entry: hash,
  reason: prose,
});

/** With which entry a chain goes on. */
export type Continuation = z.output<typeof schema>;

/** What an entry rules about a chain; undefined if it is of another kind. */
export function continuationOf(entry: Entry): Continuation | undefined {
  if (entry.kind !== continuationKind.id || entry.revision > continuationKind.revision) return undefined;
  return schema.safeParse(entry.body).data;
}

/**
 * A person rules that a device's chain goes on with a certain entry, although entries before it are lost or the chain has two
 * branches. Without it nothing after such a place counts; with it the loss stays visible.
 */
export const continuationKind = defineKind({
  id: "continuation",
  revision: 1,
  text: {
    en: {
      name: "Chain continued",
      explanation: "Entries are lost or doubled; somebody rules with which one to go on.",
    },
    de: {
      name: "Kette fortgesetzt",
      explanation: "Einträge fehlen oder sind doppelt; jemand legt fest, womit es weitergeht.",
    },
  },
  schema,
  effects: ({ device, ...rest }) => [addTo(thingKey("device", device), "continuations", rest)],
  example: {
    device: "0".repeat(64),
    sequence: 105,
    entry: "8".repeat(64),
    reason: "tablet 2 was lost in the river; entries 101 to 104 will not come",
  },
});
