import swagger from "@fastify/swagger";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import type { OpenAPIV3_1 } from "openapi-types";
import type { AppInstance } from "../app-instance.ts";
import { PROBLEM_TYPE } from "../problem.ts";

const DESCRIPTION =
  "Jobs, their entries and what was worked out from them. Every error is a problem (RFC 9457) with a stable code.";

const METHODS = ["get", "put", "post", "delete", "patch"] as const;

/** Gathers the description of every route that is added from here on (OpenAPI 3.1). */
export async function describeRoutes(app: AppInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: { title: "Toeline", version: "1", description: DESCRIPTION },
      components: {
        securitySchemes: {
          token: { type: "http", scheme: "bearer", description: "a token of a person, for programs" },
          session: {
            type: "apiKey",
            in: "cookie",
            name: "session",
            description: "set when somebody signs in",
          },
        },
      },
    },
    transform: jsonSchemaTransform,
    // without it the shared schemas are referred to but missing
    transformObject: (given) =>
      withProblems(withPointers(jsonSchemaTransformObject(given) as OpenAPIV3_1.Document)),
  });
}

/** What several schemas share is named by zod as a document of its own, which here it is not. */
const withPointers = (document: OpenAPIV3_1.Document): OpenAPIV3_1.Document =>
  JSON.parse(JSON.stringify(document).replaceAll("/__shared#/$defs/", "/__shared/$defs/"));

/** Every route can answer with a problem; said here once instead of in each of them. */
function withProblems(document: OpenAPIV3_1.Document): OpenAPIV3_1.Document {
  const schema = { $ref: "#/components/schemas/Problem" };
  const problem = { description: "What was wrong", content: { [PROBLEM_TYPE]: { schema } } };
  const paths = Object.entries(document.paths ?? {}).map(([path, item]) => {
    const operations = METHODS.flatMap((method) => {
      const operation = item?.[method];
      return operation === undefined
        ? []
        : [[method, { ...operation, responses: { ...operation.responses, default: problem } }] as const];
    });
    return [path, { ...item, ...Object.fromEntries(operations) }] as const;
  });
  return { ...document, paths: Object.fromEntries(paths) };
}
