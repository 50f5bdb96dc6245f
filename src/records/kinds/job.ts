import { z } from "zod";
import { anything, degrees, line, settable } from "./basics.ts";
import { defineKind, setEach } from "./kind.ts";

/** What holds for the whole job. Names and units of the fields as in job.json (docs/formats/job-folder.md). */
export const jobKind = defineKind({
  id: "job",
  revision: 1,
  text: {
    en: { name: "Job", explanation: "Name and place of the job, and what holds for all of it." },
    de: { name: "Auftrag", explanation: "Name und Ort des Auftrags und was für das Ganze gilt." },
  },
  schema: z.looseObject({
    set: settable({
      name: line.min(1),
      crs: line,
      latitude_deg: degrees.min(-90).max(90),
      longitude_deg: degrees.min(-180).max(180),
      convergence_deg: degrees,
      declination_deg: degrees,
      level_datum: line,
      decision: anything,
      limits: anything,
    }),
  }),
  effects: ({ set }) => setEach("job", set),
  example: {
    set: {
      name: "Example wall",
      crs: "EPSG:32631",
      latitude_deg: 51.5,
      longitude_deg: 0.02,
      convergence_deg: -2.33,
      declination_deg: 0.6,
      level_datum: "site datum",
      decision: { rule: "four-way", probability: 0.95 },
      limits: { closure_limit_deg: 1 },
    },
  },
});
