import { z } from "zod";
import { hash, line } from "./basics.ts";
import { defineKind, setEach, thingKey } from "./kind.ts";

/** What a device says of itself; the first entry of every chain. The key is the device's id, so a log carries its keys. */
export const deviceKind = defineKind({
  id: "device",
  revision: 1,
  text: {
    en: { name: "Device", explanation: "A device announces its key and says what it is." },
    de: { name: "Gerät", explanation: "Ein Gerät gibt seinen Schlüssel bekannt und sagt, was es ist." },
  },
  schema: z.looseObject({ public_key: hash, name: line.min(1), program: line.optional() }),
  effects: ({ public_key, ...about }) => setEach(thingKey("device", public_key), about),
  example: { public_key: "0".repeat(64), name: "Tablet 2", program: "toeline 0.1.0" },
});
