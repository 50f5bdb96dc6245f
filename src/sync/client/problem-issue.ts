import type { Issue } from "#core";
import { parseJson } from "#records";
import { error } from "../issue.ts";

/** Code that an office gives where the app is too old to send. */
export const TOO_OLD = "sync.client-too-old";

/** Seconds to wait where a busy office does not say how many. */
const USUAL_WAIT_S = 60;

/**
 * What an answer other than a success means for people.
 *
 * @param status of the answer.
 * @param text its body: a problem as in RFC 9457, or whatever stands between this device and the office has to say.
 * @param retryAfter its header of that name.
 */
export function issueOfAnswer(status: number, text: string, retryAfter: string | null): Issue {
  const { code, detail, values } = problemIn(text);
  if (code === TOO_OLD) return error(TOO_OLD, { found: "?", expected: "?", ...values });
  if (status === 401) return error("sync.signed-out");
  if (status === 403) return error("sync.not-allowed", { found: detail });
  if (status === 404) return error("sync.no-such-job");
  if (status === 429 || status === 503) return error("sync.busy", { seconds: secondsOf(retryAfter) });
  if (status >= 500) return error("sync.office-failed", { status });
  return error("sync.refused", { status, found: detail, reason: code });
}

interface Problem {
  readonly code: string;
  readonly detail: string;
  readonly values: Issue["values"];
}

function problemIn(text: string): Problem {
  const parsed = parseJson(text);
  const problem = parsed.ok && typeof parsed.value === "object" ? parsed.value : undefined;
  const { code, detail, title, values } = (problem ?? {}) as Readonly<Record<string, unknown>>;
  const said = [detail, title].find((one) => typeof one === "string");
  return {
    code: typeof code === "string" ? code : "",
    detail:
      typeof said === "string"
        ? said
        : text
            .replaceAll(/<[^>]*>|\s+/g, " ")
            .trim()
            .slice(0, 200),
    values: valuesOf(values),
  };
}

function valuesOf(values: unknown): Issue["values"] {
  if (typeof values !== "object" || values === null) return {};
  const plain = Object.entries(values).filter(
    (pair): pair is [string, string | number] => typeof pair[1] === "string" || typeof pair[1] === "number",
  );
  return Object.fromEntries(plain);
}

function secondsOf(retryAfter: string | null): number {
  const seconds = Number(retryAfter ?? Number.NaN);
  return Number.isFinite(seconds) && seconds >= 0 ? Math.ceil(seconds) : USUAL_WAIT_S;
}
