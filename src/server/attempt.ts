import { fail, ok, type Result } from "#core";

/**
 * Calls the platform and returns the outcome as a Result. The only place of the server's frame that catches: files, addresses and
 * sockets report what people can do something about by throwing.
 */
export async function attempt<T>(call: () => T | Promise<T>): Promise<Result<T, string>> {
  try {
    return ok(await call());
  } catch (thrown) {
    return fail(messageOf(thrown));
  }
}

/** The same for what answers at once. */
export function attemptNow<T>(call: () => T): Result<T, string> {
  try {
    return ok(call());
  } catch (thrown) {
    return fail(messageOf(thrown));
  }
}

const messageOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
