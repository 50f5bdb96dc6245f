import { ContractError, fail, ok, type Result } from "#core";

/**
 * Calls the network and returns the outcome as a Result. The only place of this layer that catches: `fetch` and its streams tell
 * a lost connection by throwing. Mistakes of the program itself go through.
 */
export async function attempt<T>(call: () => Promise<T>): Promise<Result<T, string>> {
  try {
    return ok(await call());
  } catch (thrown) {
    if (thrown instanceof ContractError) throw thrown;
    return fail(causeOf(thrown));
  }
}

/** Node says "fetch failed" and hides the reason one level deeper; browsers say all they will say at once. */
function causeOf(thrown: unknown): string {
  if (!(thrown instanceof Error)) return String(thrown);
  const { cause } = thrown;
  if (cause instanceof Error)
    return ("code" in cause && String(cause.code)) || cause.message || thrown.message;
  return thrown.message || thrown.name;
}
