import { z } from "zod";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import type { Office } from "../office.ts";
import { problem } from "../problem.ts";

const answer = z.object({ status: z.literal("ok") });

/** Whether the server runs, and whether it can do its work: for those who watch over it. They tell nothing else. */
export async function healthRoutes(app: AppInstance, office: Office): Promise<void> {
  const described = (summary: string) => ({
    schema: { summary, tags: ["health"], response: { 200: answer } },
    config: { rateLimit: false as const },
  });
  app.get("/api/1/health/live", described("The process answers"), async () => ({ status: "ok" as const }));
  app.get("/api/1/health/ready", described("The database answers too"), async (request, reply) => {
    const size = await office.store.size("");
    if (size.ok) return { status: "ok" as const };
    request.log.error({ found: size.error }, "the database does not answer");
    return problem(reply, 503, error("server.not-ready"));
  });
}
