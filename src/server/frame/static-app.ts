import { existsSync } from "node:fs";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyReply, FastifyRequest } from "fastify";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { problem } from "../problem.ts";

const PAGE = "index.html";
/** Files whose name changes with their content. */
const NAMED_BY_CONTENT = /[\\/]assets[\\/]/;

/**
 * Serves the built app, if there is one. Addresses of its pages are made by the app itself, so what a person opens and no file
 * bears the name of is answered with its start page; everything else that is not there is a 404.
 */
export async function serveApp(app: AppInstance, folder: string | undefined): Promise<void> {
  const hasApp = folder !== undefined && existsSync(join(folder, PAGE));
  if (hasApp)
    await app.register(fastifyStatic, {
      root: folder,
      index: PAGE,
      dotfiles: "ignore",
      schemaHide: true,
      cacheControl: false,
      setHeaders: (reply, path) => {
        const keep = NAMED_BY_CONTENT.test(path) ? "public, max-age=31536000, immutable" : "no-cache";
        reply.header("cache-control", keep);
      },
    });
  app.setNotFoundHandler((request, reply) =>
    hasApp && isPage(request)
      ? reply.header("cache-control", "no-cache").sendFile(PAGE)
      : answerNotFound(request, reply),
  );
}

export const answerNotFound = (_request: FastifyRequest, reply: FastifyReply): FastifyReply =>
  problem(reply, 404, error("server.not-found"));

/** Something that a person opens in the browser: not the interface, not a file, not a hidden name. */
function isPage({ method, url, headers }: FastifyRequest): boolean {
  const path = url.split(/[?#]/, 1)[0] ?? "";
  return (
    (method === "GET" || method === "HEAD") &&
    (headers.accept ?? "").includes("text/html") &&
    !path.startsWith("/api/") &&
    !/\/\.|\.[a-z0-9]{1,11}$|%|\\/i.test(path)
  );
}
