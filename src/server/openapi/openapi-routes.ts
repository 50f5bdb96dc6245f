import type { OpenAPIV3_1 } from "openapi-types";
import type { AppInstance } from "../app-instance.ts";
import { OPENAPI_PAGE_STYLE, openApiPage } from "./openapi-page.ts";

/** What programs may ask of this server: as a document for them, and as a page for those who write them. */
export async function openApiRoutes(app: AppInstance): Promise<void> {
  const document = () => app.swagger() as unknown as OpenAPIV3_1.Document;
  const described = (summary: string) => ({ schema: { summary, tags: ["interface"] } });
  app.get("/api/1/openapi.json", described("This description, OpenAPI 3.1"), async () => document());
  app.get("/api/1/docs", described("This description as a page"), async (_request, reply) =>
    reply.type("text/html; charset=utf-8").send(openApiPage(document())),
  );
  app.get("/api/1/docs.css", described("Style of that page"), async (_request, reply) =>
    reply.type("text/css; charset=utf-8").send(OPENAPI_PAGE_STYLE),
  );
}
