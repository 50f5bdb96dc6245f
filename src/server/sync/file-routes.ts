import { z } from "zod";
import { type Issue, ok, type Result } from "#core";
import { type Entry, namedBlobs } from "#records";
import { type BlobRef, blobStateSchema, blobsAnswerSchema, blobsAskedSchema, MAX_BLOB_BYTES } from "#sync";
import type { AppInstance } from "../app-instance.ts";
import { error } from "../issue.ts";
import { MAX_PART_BODY_BYTES } from "../limits.ts";
import { problem } from "../problem.ts";
import { fileParameters, jobParameter } from "./parameters.ts";
import { rightOf } from "./right-of-kind.ts";
import { storeProblem } from "./store-problem.ts";
import type { SyncOffice } from "./sync-parts.ts";

const byte = z.coerce.number().int().min(0);
const NOTHING = { size: 0, received: 0, isComplete: false };

/**
 * Files that entries name. A file is reached only through an entry of the job that names it: who may read the job may read it, and
 * nothing can be left here that no entry speaks of.
 */
export function fileRoutes(app: AppInstance, office: SyncOffice): void {
  const { access, store } = office;
  app.post(
    "/api/1/jobs/:job/files",
    {
      schema: {
        summary: "Ask how far files have come",
        tags: ["sync"],
        params: jobParameter,
        body: blobsAskedSchema,
        response: { 200: blobsAnswerSchema },
      },
      onRequest: access.needs("read"),
    },
    async (request, reply) => {
      const files = [];
      for (const file of request.body.files) {
        const named = await entryNaming(office, request.params.job, file);
        if (!named.ok) return storeProblem(reply, named.error);
        const held = await store.blob(file.blob);
        if (!held.ok) return storeProblem(reply, held.error);
        files.push(named.value === undefined ? null : { ...(held.value ?? NOTHING) });
      }
      reply.header("cache-control", "no-store");
      return { format: "toeline-files-answer/1" as const, files };
    },
  );
  app.put(
    "/api/1/jobs/:job/chains/:device/:sequence/files/:blob",
    {
      schema: {
        summary: "Send a part of a file",
        description:
          "At most 256 KB, in order; one that is held already changes nothing. The hash is checked with the last part.",
        tags: ["sync"],
        params: fileParameters,
        querystring: z.object({
          size: byte.describe("of the whole file, bytes"),
          offset: byte.describe("where the part begins, bytes"),
        }),
        consumes: ["application/octet-stream"],
        response: { 200: blobStateSchema },
      },
      bodyLimit: MAX_PART_BODY_BYTES,
      onRequest: access.needs("read"),
    },
    async (request, reply) => {
      const { job, blob } = request.params;
      const { size, offset } = request.query;
      if (size > MAX_BLOB_BYTES)
        return problem(reply, 413, error("sync.file-too-large", { found: size, expected: MAX_BLOB_BYTES }));
      const named = await entryNaming(office, job, request.params);
      if (!named.ok) return storeProblem(reply, named.error);
      if (named.value === undefined) return problem(reply, 404, error("sync.file-not-named", { blob }));
      const person = access.personOf(request);
      const rights = ["record", rightOf(named.value) ?? "record"] as const;
      const may = await Promise.all(
        rights.map(async (right) => person !== undefined && (await access.mayIn(person, job, right))),
      );
      if (!may.includes(true)) return problem(reply, 403, error("access.not-allowed", { right: "record" }));
      const body = request.body instanceof Uint8Array ? Uint8Array.from(request.body) : new Uint8Array(0);
      const put = await store.putBlobPart({ hash: blob, size, offset, bytes: body });
      return put.ok ? { ...put.value } : storeProblem(reply, put.error);
    },
  );
  app.get(
    "/api/1/jobs/:job/chains/:device/:sequence/files/:blob",
    {
      schema: {
        summary: "Fetch a file",
        description: "As it came, for saving; a browser does not show it.",
        tags: ["sync"],
        params: fileParameters,
        querystring: z.object({ from: byte.default(0).describe("byte to begin with") }),
        produces: ["application/octet-stream"],
      },
      onRequest: access.needs("read"),
    },
    async (request, reply) => {
      const { job, blob } = request.params;
      const named = await entryNaming(office, job, request.params);
      if (!named.ok) return storeProblem(reply, named.error);
      if (named.value === undefined) return problem(reply, 404, error("sync.file-not-named", { blob }));
      const bytes = await store.readBlob(blob, request.query.from);
      if (!bytes.ok) return storeProblem(reply, bytes.error);
      if (bytes.value === undefined) return problem(reply, 404, error("sync.file-not-here", { blob }));
      return (
        reply
          .header("cache-control", "no-store")
          .header("content-disposition", `attachment; filename="${blob}"`)
          .header("x-content-type-options", "nosniff")
          // nothing of what somebody has sent runs in a browser, even if it is opened there
          .header("content-security-policy", "default-src 'none'; sandbox")
          .type("application/octet-stream")
          .send(Buffer.from(bytes.value.buffer))
      );
    },
  );
}

/** The entry at that place, if it names the file; undefined if there is none. */
async function entryNaming(
  { store }: SyncOffice,
  job: string,
  { device, sequence, blob }: BlobRef,
): Promise<Result<Entry | undefined, Issue>> {
  const read = await store.readChain(job, device, sequence, sequence);
  return read.ok ? ok(read.value.find((entry) => namedBlobs(entry).includes(blob))) : read;
}
