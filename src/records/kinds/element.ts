import { z } from "zod";
import { degrees, line, metres, reference, settable } from "./basics.ts";
import { defineKind, setEach, thingKey } from "./kind.ts";

/** A line of the schedule, or a change of one. Fields as in elements.csv, in metres and degrees. */
export const elementKind = defineKind({
  id: "element",
  revision: 1,
  text: {
    en: { name: "Element", explanation: "What is to be built: a line of the schedule, or a change of it." },
    de: { name: "Element", explanation: "Was gebaut werden soll: eine Zeile der Liste oder deren Änderung." },
  },
  schema: z.looseObject({
    element: reference,
    set: settable({
      kind: reference,
      diameter_m: metres.positive(),
      length_m: metres.positive(),
      width_m: metres.positive(),
      orientation_deg: degrees,
      easting_m: metres,
      northing_m: metres,
      head_level_m: metres,
      cutoff_level_m: metres,
      toe_level_m: metres,
      rake_deg: degrees.min(0).max(90),
      rake_bearing_deg: degrees,
      group: line,
      sequence: z.number().int(),
      role: line,
      load_kn: z.number(),
      withdrawn: z.boolean(),
    }),
  }),
  effects: ({ element, set }) => setEach(thingKey("element", element), set),
  example: {
    element: "P12",
    set: {
      kind: "bored-pile",
      diameter_m: 1.2,
      length_m: null,
      width_m: null,
      orientation_deg: null,
      easting_m: 523145.12,
      northing_m: 178456.31,
      head_level_m: 4.5,
      cutoff_level_m: 3.2,
      toe_level_m: -21.5,
      rake_deg: 0,
      rake_bearing_deg: null,
      group: "wall",
      sequence: 12,
      role: "S",
      load_kn: 3200,
      withdrawn: false,
    },
  },
});
