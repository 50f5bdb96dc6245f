import { z } from "zod";
import { anything, line, metres, reference, settable } from "./basics.ts";
import { defineKind, setEach, thingKey } from "./kind.ts";

/** An instrument, or a change of what is known about it. Fields as in job.json. */
export const instrumentKind = defineKind({
  id: "instrument",
  revision: 1,
  text: {
    en: { name: "Instrument", explanation: "A probe with its serial number and dimensions." },
    de: { name: "Messgerät", explanation: "Eine Sonde mit Seriennummer und Abmessungen." },
  },
  schema: z.looseObject({
    instrument: reference,
    set: settable({
      serial: line,
      gauge_length_m: metres.positive(),
      outer_diameter_mm: z.number().positive(),
      length_m: metres.positive(),
      cable: anything,
      budget: reference,
      errors: anything,
    }),
  }),
  effects: ({ instrument, set }) => setEach(thingKey("instrument", instrument), set),
  example: {
    instrument: "probe-a",
    set: {
      serial: "0417",
      gauge_length_m: 0.8,
      outer_diameter_mm: 42,
      length_m: 1.1,
      cable: null,
      budget: "mems-standard",
      errors: { "tilt-noise_deg": 0.01 },
    },
  },
});
