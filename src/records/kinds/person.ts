import { z } from "zod";
import { hash, line, reference } from "./basics.ts";
import { addTo, defineKind, setEach, thingKey } from "./kind.ts";

/** Who somebody is, and the public key with which that person seals runs and reports. */
export const personKind = defineKind({
  id: "person",
  revision: 1,
  text: {
    en: { name: "Person", explanation: "Somebody's name and the public key that person signs with." },
    de: {
      name: "Person",
      explanation: "Name einer Person und der öffentliche Schlüssel, mit dem sie unterschreibt.",
    },
  },
  schema: z.looseObject({
    person: reference,
    name: line.min(1),
    role: line.optional(),
    public_key: hash.optional(),
  }),
  effects: ({ person, public_key, ...about }) => [
    ...setEach(thingKey("person", person), about),
    // a key that was once announced stays known: what it signed must remain checkable
    ...(public_key === undefined ? [] : [addTo(thingKey("person", person), "keys", { public_key })]),
  ],
  example: {
    person: "anna",
    name: "Anna Muster",
    role: "technician",
    public_key: "1".repeat(64),
  },
});
