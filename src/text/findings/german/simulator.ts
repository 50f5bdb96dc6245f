import type { Sentences } from "../sentences.ts";

export const simulatorSentences: Sentences = {
  "simulator.unknown-scenario": 'Ein Szenario "{found}" gibt es nicht. Erwartet wird eines von: {expected}.',
  "simulator.field": "{found} kann in diesem Feld des Szenarios nicht stehen. Erwartet: {expected}.",
  "simulator.reference":
    'Das Szenario nennt hier "{found}", enthält es aber nicht. Ergänzen oder den Namen berichtigen.',
  "simulator.run":
    "Messreihe {run} fährt in einer Lage aufwärts, in der sie nicht abwärts fuhr. Die Lage kann nur oben gewechselt werden: vorher eine Fahrt abwärts in dieser Lage einfügen.",
};
