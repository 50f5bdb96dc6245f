import { z } from "zod";
import { anything, reference, settable } from "./basics.ts";
import { defineKind, setEach, thingKey } from "./kind.ts";

/** A rule of the job with its numbers and the document it comes from. Fields as in job.json. */
export const criterionKind = defineKind({
  id: "criterion",
  revision: 1,
  text: {
    en: {
      name: "Rule",
      explanation: "What counts as good: a criterion with its numbers, or a change of it.",
    },
    de: {
      name: "Regel",
      explanation: "Was als gut gilt: ein Kriterium mit seinen Zahlen oder deren Änderung.",
    },
  },
  schema: z.looseObject({
    criterion: reference,
    set: settable({
      kind: reference,
      applies_to: anything,
      parameters: anything,
      source: anything,
      withdrawn: z.boolean(),
    }),
  }),
  effects: ({ criterion, set }) => setEach(thingKey("criterion", criterion), set),
  example: {
    criterion: "plumb",
    set: {
      kind: "verticality",
      applies_to: { kind: "bored-pile" },
      parameters: { ratio: 0.0133333, measured: "chord" },
      source: { document: "Project specification", clause: "5.2" },
      withdrawn: false,
    },
  },
});
