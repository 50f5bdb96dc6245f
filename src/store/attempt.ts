import { ContractError, fail, type Issue, ok, type Result } from "#core";
import { error } from "./issue.ts";

/** What the databases call it when something goes wrong that people can do something about. */
const CODE_OF: readonly (readonly [RegExp, (found: string) => Issue])[] = [
  [/^(?:SQLITE_FULL|53100|ENOSPC|QuotaExceededError)/, (found) => error("store.full", { found })],
  [/^(?:SQLITE_BUSY|SQLITE_LOCKED|40001|40P01|55P03|53300)/, (found) => error("store.busy", { found })],
  [/^(?:SQLITE_CORRUPT|SQLITE_NOTADB|XX001|XX002)/, (found) => error("store.damaged", { found })],
  [
    /^(?:ECONN|ENOTFOUND|ETIMEDOUT|EPIPE|57P|08|28|3D000|SQLITE_CANTOPEN|SQLITE_READONLY|SQLITE_IOERR)/,
    (found) => error("store.unreachable", { found }),
  ],
  [/^(?:DatabaseClosedError|InvalidStateError)/, () => error("store.closed")],
];

/**
 * Calls a database and returns the outcome as a Result. The only place of this layer that catches: databases tell a full disk,
 * a lost connection or a damaged file by throwing. Mistakes of the program itself go through.
 */
export async function attempt<T>(call: () => Promise<T>): Promise<Result<T, Issue>> {
  try {
    return ok(await call());
  } catch (thrown) {
    if (thrown instanceof ContractError) throw thrown;
    return fail(issueOf(thrown));
  }
}

function issueOf(thrown: unknown): Issue {
  if (!(thrown instanceof Error)) return error("store.failed", { found: String(thrown) });
  const inner = "inner" in thrown && thrown.inner instanceof Error ? thrown.inner : thrown;
  const found = thrown.message || thrown.name;
  const words = [codeOf(inner), inner.name, thrown.name];
  for (const [pattern, issue] of CODE_OF) if (words.some((word) => pattern.test(word))) return issue(found);
  if (/connection is not open|driver has already been destroyed/.test(found)) return error("store.closed");
  if (/directory does not exist/.test(found)) return error("store.unreachable", { found });
  return error("store.failed", { found });
}

const codeOf = (thrown: Error): string =>
  "code" in thrown && typeof thrown.code === "string" ? thrown.code : "";
