import { z } from "zod";
import { hash, line, prose, reference } from "./basics.ts";
import { addTo, defineKind, setEach, thingKey } from "./kind.ts";
import { sealSchema } from "./seal-schema.ts";

/** A report left the house. Its files are known by their hashes, and the head of the job's tree is printed on it. */
export const reportIssuedKind = defineKind({
  id: "report-issued",
  revision: 1,
  text: {
    en: { name: "Report issued", explanation: "A report left the house, with the hashes of its files." },
    de: {
      name: "Bericht ausgegeben",
      explanation: "Ein Bericht ging hinaus, mit den Prüfsummen seiner Dateien.",
    },
  },
  schema: z.looseObject({
    report: reference,
    title: line,
    state: line.optional(),
    files: z.array(z.looseObject({ name: line.min(1), type: line.min(1), blob: hash })).min(1),
    elements: z.array(reference),
    head: z.looseObject({ size: z.number().int().min(0), root: hash }).optional(),
    replaces: reference.optional(),
    remark: prose.optional(),
  }),
  effects: ({ report, ...issued }) => setEach(thingKey("report", report), { issued }),
  example: {
    report: "R-007-B",
    title: "As-built survey of wall A",
    state: "shared",
    files: [{ name: "R-007-B.pdf", type: "application/pdf", blob: "4".repeat(64) }],
    elements: ["P12"],
    head: { size: 412, root: "5".repeat(64) },
    replaces: "R-007-A",
    remark: "limits of clause 5.2 corrected",
  },
});

/** Somebody puts a name to a run or a report: what it means, and a signature over what it covers. */
export const signOffKind = defineKind({
  id: "sign-off",
  revision: 1,
  text: {
    en: { name: "Sign-off", explanation: "Somebody signs for a run or a report, and says what that means." },
    de: {
      name: "Unterschrift",
      explanation: "Jemand unterschreibt eine Messreihe oder einen Bericht, mit Bedeutung.",
    },
  },
  schema: z.looseObject({ seal: sealSchema }),
  effects: ({ seal }) => [addTo(seal.statement.about, "seals", seal)],
  example: {
    seal: {
      statement: {
        format: "toeline-seal/1",
        job: "example",
        about: thingKey("run", "P12-1"),
        meaning: "taken by",
        person: "anna",
        name: "Anna Muster",
        at: "2026-03-02T10:40:00+01:00",
        covers: { up_to: { ["0".repeat(64)]: 41 }, count: 38, root: "6".repeat(64) },
      },
      public_key: "1".repeat(64),
      signature: "7".repeat(128),
    },
  },
});
