import { z } from "zod";
import { anything, degrees, hash, line, prose, reference, time } from "./basics.ts";
import { addTo, defineKind, setEach, thingKey } from "./kind.ts";

const runKey = (run: string) => thingKey("run", run);

/** A run begins. Fields as in job.json; further ones of the run stand in `settings`. */
export const runOpenedKind = defineKind({
  id: "run-opened",
  revision: 1,
  text: {
    en: { name: "Run opened", explanation: "A series of readings begins: where, with what, by whom." },
    de: { name: "Messreihe begonnen", explanation: "Eine Messreihe beginnt: wo, womit, durch wen." },
  },
  schema: z.looseObject({
    run: reference,
    element: reference,
    tube: reference.optional(),
    instrument: reference,
    measures: reference,
    calibrations: z.array(reference).max(100),
    operator: line.optional(),
    started_at: time.optional(),
    settings: z.record(z.string(), anything).optional(),
  }),
  effects: ({ run, ...opened }) => setEach(runKey(run), { opened }),
  example: {
    run: "P12-1",
    element: "P12",
    tube: "A",
    instrument: "probe-a",
    measures: "tilt-turn",
    calibrations: ["tz-1"],
    operator: "anna",
    started_at: "2026-03-02T09:30:00+01:00",
    settings: { zeroed: false, depth_zero_m: 0.12 },
  },
});

const cell = z.union([z.number(), z.string().max(500), z.null()]);

/** Readings, one or many, in columns of one length. Written once: a wrong one is set aside, never changed. */
export const readingsKind = defineKind({
  id: "readings",
  revision: 1,
  text: {
    en: { name: "Readings", explanation: "One or more readings of a run, as the instrument gave them." },
    de: {
      name: "Messwerte",
      explanation: "Ein oder mehrere Messwerte einer Messreihe, wie das Gerät sie gab.",
    },
  },
  schema: z
    .looseObject({ run: reference, columns: z.record(z.string().min(1).max(60), z.array(cell).min(1)) })
    .refine(({ columns }) => new Set(Object.values(columns).map((column) => column.length)).size === 1, {
      message: "columns of one length, at least one",
      path: ["columns"],
    }),
  effects: ({ run, ...rest }) => [addTo(runKey(run), "readings", rest)],
  example: {
    run: "P12-1",
    columns: {
      time_s: [0, 12.4],
      depth_m: [0.5, 1],
      tilt_x_deg: [0.412, 0.398],
      tilt_y_deg: [-0.203, null],
      turn_deg: [0.02, 0.05],
      leg: ["open", "down"],
    },
  },
});

/** A heading known at the top of the hole, or in between. */
export const referenceKind = defineKind({
  id: "reference",
  revision: 1,
  text: {
    en: { name: "Reference", explanation: "A heading known before, after or during a run." },
    de: {
      name: "Richtungsbezug",
      explanation: "Eine vor, nach oder während der Messreihe bekannte Richtung.",
    },
  },
  schema: z.looseObject({
    run: reference,
    role: z.enum(["opening", "tie", "closing"]),
    heading_deg: degrees,
    north: z.enum(["grid", "true", "magnetic"]),
    standard_uncertainty_deg: degrees.min(0).optional(),
    taken_at: time.optional(),
  }),
  effects: ({ run, ...rest }) => [addTo(runKey(run), "references", rest)],
  example: {
    run: "P12-1",
    role: "opening",
    heading_deg: 12.5,
    north: "magnetic",
    standard_uncertainty_deg: 1,
    taken_at: "2026-03-02T09:29:00+01:00",
  },
});

/** A run ends. The number of readings entries says whether all have arrived. */
export const runClosedKind = defineKind({
  id: "run-closed",
  revision: 1,
  text: {
    en: { name: "Run closed", explanation: "A series of readings ends, complete or not." },
    de: { name: "Messreihe beendet", explanation: "Eine Messreihe endet, vollständig oder nicht." },
  },
  schema: z.looseObject({
    run: reference,
    outcome: z.enum(["complete", "broken-off"]),
    rows: z.number().int().min(0),
    remark: prose.optional(),
  }),
  effects: ({ run, ...closed }) => setEach(runKey(run), { closed }),
  example: { run: "P12-1", outcome: "complete", rows: 106, remark: "water at 14 m" },
});

const rowsOf = z.looseObject({
  run: reference,
  readings: hash,
  rows: z.array(z.number().int().min(0)).min(1).max(5000),
  reason: prose,
});
type RowsOf = z.output<typeof rowsOf>;

const aside = ({ run, readings, rows, reason }: RowsOf, isAside: boolean) =>
  setEach(
    runKey(run),
    Object.fromEntries(rows.map((row) => [`row/${readings}/${row}`, { aside: isAside, reason }])),
  );

/** Takes readings out of the computation. They stay where they are. */
export const setAsideKind = defineKind({
  id: "set-aside",
  revision: 1,
  text: {
    en: { name: "Set aside", explanation: "Readings are taken out of the computation, with the reason." },
    de: { name: "Zurückgestellt", explanation: "Messwerte werden mit Begründung aus der Rechnung genommen." },
  },
  schema: rowsOf,
  effects: (body) => aside(body, true),
  example: { run: "P12-1", readings: "2".repeat(64), rows: [3, 4], reason: "cable moved while reading" },
});

/** Takes them in again. */
export const putBackKind = defineKind({
  id: "put-back",
  revision: 1,
  text: {
    en: { name: "Put back", explanation: "Readings that were set aside count again, with the reason." },
    de: {
      name: "Wieder aufgenommen",
      explanation: "Zurückgestellte Messwerte zählen wieder, mit Begründung.",
    },
  },
  schema: rowsOf,
  effects: (body) => aside(body, false),
  example: { run: "P12-1", readings: "2".repeat(64), rows: [4], reason: "repeat agrees with it" },
});
