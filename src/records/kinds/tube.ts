import { z } from "zod";
import { metres, reference, settable } from "./basics.ts";
import { defineKind, setEach, thingKey } from "./kind.ts";

/** An access tube of an element, or a change of it. Fields as in tubes.csv. */
export const tubeKind = defineKind({
  id: "tube",
  revision: 1,
  text: {
    en: { name: "Access tube", explanation: "A tube of an element, as built." },
    de: { name: "Messrohr", explanation: "Ein Rohr eines Elements, wie eingebaut." },
  },
  schema: z.looseObject({
    element: reference,
    tube: reference,
    set: settable({
      easting_m: metres,
      northing_m: metres,
      offset_east_m: metres,
      offset_north_m: metres,
      top_level_m: metres,
      inner_diameter_mm: z.number().positive(),
      length_m: metres.positive(),
      withdrawn: z.boolean(),
    }),
  }),
  effects: ({ element, tube, set }) => setEach(thingKey("tube", element, tube), set),
  example: {
    element: "P12",
    tube: "A",
    set: {
      easting_m: null,
      northing_m: null,
      offset_east_m: 0.35,
      offset_north_m: 0,
      top_level_m: 4.9,
      inner_diameter_mm: 50,
      length_m: 27,
      withdrawn: false,
    },
  },
});
