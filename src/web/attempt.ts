import { ContractError, fail, ok, type Result } from "#core";

/**
 * Calls something of the platform and returns the outcome as a Result. With `attemptLater` the only place of this layer that
 * catches: browsers tell a full or forbidden store and a lost connection by throwing. Mistakes of the program itself go through.
 */
export function attempt<T>(call: () => T): Result<T, string> {
  try {
    return ok(call());
  } catch (thrown) {
    return failed(thrown);
  }
}

/** The same for what is answered later. */
export async function attemptLater<T>(call: () => Promise<T>): Promise<Result<T, string>> {
  try {
    return ok(await call());
  } catch (thrown) {
    return failed(thrown);
  }
}

function failed(thrown: unknown): Result<never, string> {
  if (thrown instanceof ContractError) throw thrown;
  return fail(thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown));
}
