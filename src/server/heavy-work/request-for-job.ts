import { type Issue, ok, type Result } from "#core";
import { canonicalJson, type JsonObject, sha256Hex, utf8 } from "#records";
import type { Office } from "../office.ts";
import type { WorkRequest } from "./work-queue.ts";

/**
 * A request for work on a job as its log stands now. Asked for again before the log has grown, it has the same key and is the
 * same piece of work, whoever asks.
 */
export async function requestForJob(
  office: Pick<Office, "store">,
  { task, job, input, requestedBy }: Omit<WorkRequest, "entries" | "key">,
): Promise<Result<WorkRequest, Issue>> {
  const size = await office.store.size(job);
  if (!size.ok) return size;
  const content: JsonObject = { task, job, input, entries: size.value };
  const text = canonicalJson(content);
  if (!text.ok) return text;
  const key = await sha256Hex(utf8(text.value));
  return ok({ task, job, input, entries: size.value, requestedBy, key });
}
