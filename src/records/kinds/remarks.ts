import { z } from "zod";
import { hash, line, prose, reference, thing } from "./basics.ts";
import { addTo, defineKind, setEach, thingKey } from "./kind.ts";

/** Something that numbers cannot say. */
export const noteKind = defineKind({
  id: "note",
  revision: 1,
  text: {
    en: { name: "Note", explanation: "A remark about the job or one of its things." },
    de: { name: "Notiz", explanation: "Eine Bemerkung zum Auftrag oder zu einem seiner Dinge." },
  },
  schema: z.looseObject({ about: thing, text: prose }),
  effects: ({ about, ...rest }) => [addTo(about, "notes", rest)],
  example: { about: thingKey("element", "P12"), text: "Casing knocked by the excavator before the run." },
});

/** A picture, by the hash of its file; the file itself travels on its own. */
export const photoKind = defineKind({
  id: "photo",
  revision: 1,
  text: {
    en: { name: "Photo", explanation: "A picture of something, known by the hash of its file." },
    de: { name: "Foto", explanation: "Ein Bild, bekannt durch die Prüfsumme seiner Datei." },
  },
  schema: z.looseObject({
    about: thing,
    blob: hash,
    bytes: z.number().int().positive(),
    type: line.min(1),
    caption: line.optional(),
  }),
  effects: ({ about, ...rest }) => [addTo(about, "photos", rest)],
  example: {
    about: thingKey("run", "P12-1"),
    blob: "3".repeat(64),
    bytes: 184320,
    type: "image/jpeg",
    caption: "head of tube A",
  },
});

/** What somebody decided, where the program leaves a choice: which run counts, whether readings are accepted. */
export const decisionKind = defineKind({
  id: "decision",
  revision: 1,
  text: {
    en: { name: "Decision", explanation: "Somebody decides what the program leaves open, and says why." },
    de: { name: "Entscheidung", explanation: "Jemand entscheidet, was offen war, und sagt warum." },
  },
  schema: z.looseObject({ about: thing, question: reference, answer: z.json(), reason: prose }),
  effects: ({ about, question, ...rest }) => setEach(about, { [`decision/${question}`]: rest }),
  example: {
    about: thingKey("element", "P12"),
    question: "which-run-counts",
    answer: "P12-2",
    reason: "the first run was stopped by water",
  },
});

const nonConformance = (id: string) => thingKey("non-conformance", id);

export const nonConformanceOpenedKind = defineKind({
  id: "non-conformance-opened",
  revision: 1,
  text: {
    en: { name: "Non-conformance opened", explanation: "Something was not as it had to be." },
    de: { name: "Abweichung eröffnet", explanation: "Etwas war nicht, wie es sein musste." },
  },
  schema: z.looseObject({ non_conformance: reference, about: thing, text: prose }),
  effects: ({ non_conformance, ...opened }) => setEach(nonConformance(non_conformance), { opened }),
  example: { non_conformance: "NC-3", about: thingKey("element", "P12"), text: "Toe outside its allowance." },
});

export const nonConformanceAnsweredKind = defineKind({
  id: "non-conformance-answered",
  revision: 1,
  text: {
    en: { name: "Non-conformance answered", explanation: "What is proposed or was done about it." },
    de: { name: "Abweichung beantwortet", explanation: "Was dazu vorgeschlagen oder getan wird." },
  },
  schema: z.looseObject({ non_conformance: reference, text: prose }),
  effects: ({ non_conformance, ...rest }) => [addTo(nonConformance(non_conformance), "answers", rest)],
  example: { non_conformance: "NC-3", text: "Designer accepts the position with a longer capping beam." },
});

export const nonConformanceClosedKind = defineKind({
  id: "non-conformance-closed",
  revision: 1,
  text: {
    en: { name: "Non-conformance closed", explanation: "It is settled, and how." },
    de: { name: "Abweichung geschlossen", explanation: "Sie ist erledigt, und wie." },
  },
  schema: z.looseObject({ non_conformance: reference, outcome: reference, text: prose }),
  effects: ({ non_conformance, ...closed }) => setEach(nonConformance(non_conformance), { closed }),
  example: {
    non_conformance: "NC-3",
    outcome: "accepted-as-built",
    text: "Closed with the designer's letter.",
  },
});
