import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import type { Office } from "../office.ts";
import { problem } from "../problem.ts";
import type { Book } from "./book.ts";
import { administrationRoutes } from "./routes/administration-routes.ts";
import type { RouteContext } from "./routes/context.ts";
import { factorRoutes } from "./routes/factor-routes.ts";
import { linkRoutes } from "./routes/link-routes.ts";
import { ownAccountRoutes } from "./routes/own-account-routes.ts";
import { peopleRoutes } from "./routes/people-routes.ts";
import { sessionRoutes } from "./routes/session-routes.ts";
import { tokenRoutes } from "./routes/token-routes.ts";

/** Signing in, accounts, people of jobs, tokens, and the list of what happened. Where there are no accounts only who is there is told. */
export async function accountRoutes(app: AppInstance, office: Office): Promise<void> {
  const { settings, access, clock } = office;
  const book: Book = { db: office.tables.db, settings, clock };
  const context: RouteContext = { book, access };
  // a scope of its own: the hook below is for these routes only
  await app.register(async (scope: AppInstance) => {
    scope.addHook("onRequest", async (request, reply) => {
      await access.identify(request);
      const isForAll = request.method === "GET" && request.routeOptions.url === "/api/1/session";
      if (settings.mode === "shared" || isForAll) return undefined;
      return problem(reply, 409, error("access.no-accounts"));
    });
    sessionRoutes(scope, context);
    ownAccountRoutes(scope, context);
    factorRoutes(scope, context);
    tokenRoutes(scope, context);
    linkRoutes(scope, context);
    peopleRoutes(scope, context);
    administrationRoutes(scope, context);
  });
}
