import { fail, type Issue, ok, type Result } from "#core";
import { attemptLater } from "../../attempt.ts";
import { error } from "../issue.ts";

const OFFICE_SILENT_MS = 30_000;

/**
 * Asks the office of this app for something.
 *
 * Errors: desk.office-silent, desk.office-refused.
 */
export async function askOffice(path: string): Promise<Result<Uint8Array<ArrayBuffer>, Issue>> {
  const answer = await attemptLater(async () => {
    const response = await fetch(new URL(path, self.location.origin), {
      signal: AbortSignal.timeout(OFFICE_SILENT_MS),
    });
    return { status: response.status, bytes: new Uint8Array(await response.arrayBuffer()) };
  });
  if (!answer.ok) return fail(error("desk.office-silent"));
  const { status, bytes } = answer.value;
  return status === 200 ? ok(bytes) : fail(error("desk.office-refused", { status }));
}
