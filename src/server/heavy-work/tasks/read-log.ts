import { type Issue, ok, type Result } from "#core";
import type { Entry } from "#records";
import type { Store } from "#store";

/**
 * The first entries of a job's log in their order of arrival.
 *
 * @param count how many; fewer if the log has fewer.
 */
export async function readLog(
  store: Store,
  job: string,
  count: number,
): Promise<Result<readonly Entry[], Issue>> {
  const entries: Entry[] = [];
  for (;;) {
    const page = await store.readAfter(job, entries.length);
    if (!page.ok) return page;
    entries.push(...page.value.entries);
    if (!page.value.more || entries.length >= count) return ok(entries.slice(0, count));
  }
}
