import { z } from "zod";
import { anything, line, reference, time } from "./basics.ts";
import { addTo, defineKind, setEach, thingKey } from "./kind.ts";

/** A calibration with its raw data, as one whole: it is not edited field by field. Fields as in job.json. */
export const calibrationKind = defineKind({
  id: "calibration",
  revision: 1,
  text: {
    en: {
      name: "Calibration",
      explanation: "A comparison with something known, with its raw data and how long it holds.",
    },
    de: { name: "Kalibrierung", explanation: "Ein Vergleich mit Bekanntem, mit Rohdaten und Gültigkeit." },
  },
  schema: z.looseObject({
    calibration: reference,
    instrument: reference,
    kind: reference,
    made_at: time,
    valid_until: line.optional(),
    max_runs: z.number().int().positive().optional(),
    data: anything,
  }),
  effects: ({ calibration, ...record }) => setEach(thingKey("calibration", calibration), { record }),
  example: {
    calibration: "tz-1",
    instrument: "probe-a",
    kind: "tilt-zero",
    made_at: "2026-03-02T07:10:00Z",
    valid_until: "2026-04-02",
    max_runs: 40,
    data: {
      faces: [
        { face: 1, x_deg: 0.412, y_deg: -0.203 },
        { face: 2, x_deg: -0.018, y_deg: 0.311 },
      ],
    },
  },
});

/** Something happened to the instrument after which the calibration no longer holds. */
export const calibrationEndedKind = defineKind({
  id: "calibration-ended",
  revision: 1,
  text: {
    en: { name: "Calibration ended", explanation: "A knock or a repair ended a calibration." },
    de: {
      name: "Kalibrierung beendet",
      explanation: "Ein Stoß oder eine Reparatur hat eine Kalibrierung beendet.",
    },
  },
  schema: z.looseObject({ calibration: reference, at: time, what: line.min(1) }),
  effects: ({ calibration, ...event }) => [addTo(thingKey("calibration", calibration), "ended_by", event)],
  example: { calibration: "tz-1", at: "2026-03-03T11:05:00+01:00", what: "probe dropped on the platform" },
});
