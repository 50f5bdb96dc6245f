import { z } from "zod";
import { jobSchema } from "./job-folder/schema/job-schema.ts";
import { resultsSchema } from "./results/results-schema.ts";

/**
 * JSON Schemas (draft 2020-12) of job.json and results.json, as published in docs/formats/schema.
 *
 * Keys that the schema does not name are allowed: the reader warns about them and passes them over.
 */
export function jsonSchemas(): Readonly<Record<"job" | "results", unknown>> {
  return { job: published(jobSchema), results: published(resultsSchema) };
}

function published(schema: z.ZodType): unknown {
  return z.toJSONSchema(schema, {
    io: "input",
    override: ({ jsonSchema }) => {
      if (jsonSchema.additionalProperties === false) delete jsonSchema.additionalProperties;
    },
  });
}
