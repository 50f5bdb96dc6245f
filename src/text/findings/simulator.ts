import type { Sentences } from "./sentences.ts";

export const simulatorSentences: Sentences = {
  "simulator.unknown-scenario": 'There is no scenario "{found}". Expected one of: {expected}.',
  "simulator.field": "{found} cannot stand in this field of the scenario. Expected: {expected}.",
  "simulator.reference":
    'The scenario names "{found}" here, but does not have it. Add it, or correct the name.',
  "simulator.run":
    "Run {run} goes up on a face on which it did not go down. The face can only be changed at the top: put a way down on that face before it.",
};
