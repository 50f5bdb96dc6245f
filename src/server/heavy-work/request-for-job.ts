import { type Issue, ok, type Result } from "#core";
import { canonicalJson, type JsonObject, sha256Hex, type TreeHead, utf8 } from "#records";
import type { Office } from "../office.ts";
import type { WorkRequest } from "./work-queue.ts";

/**
 * A request for work on a job as its log stands now. Asked for again before the log has grown, it has the same key and is the
 * same piece of work, whoever asks.
 *
 * @param head signed over the log; the work goes by the entries under it.
 */
export async function requestForJob(
  office: Pick<Office, "store">,
  { task, job, input, requestedBy }: Omit<WorkRequest, "entries" | "key">,
  head?: TreeHead,
): Promise<Result<WorkRequest, Issue>> {
  const size = head === undefined ? await office.store.size(job) : ok(head.size);
  if (!size.ok) return size;
  const content: JsonObject = { task, job, input, entries: size.value };
  const text = canonicalJson(content);
  if (!text.ok) return text;
  const key = await sha256Hex(utf8(text.value));
  const signed = head === undefined ? {} : { signed: { root: head.root, at: head.at } };
  return ok({ task, job, input, entries: size.value, requestedBy, key, ...signed });
}
