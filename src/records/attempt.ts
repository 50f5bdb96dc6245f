import { fail, ok, type Result } from "#core";

/**
 * Calls a function of the platform that reports bad data by throwing, and returns the outcome as a Result instead.
 *
 * The only place of this layer that catches: for the platform's JSON reader, text decoder and cryptography.
 */
export function attempt<T>(call: () => T): Result<T, string> {
  try {
    return ok(call());
  } catch (thrown) {
    return fail(messageOf(thrown));
  }
}

/** The same for a function that answers later. */
export function attemptLater<T>(call: () => Promise<T>): Promise<Result<T, string>> {
  const started = attempt(call);
  if (!started.ok) return Promise.resolve(started);
  return started.value.then(
    (value) => ok(value),
    (thrown: unknown) => fail(messageOf(thrown)),
  );
}

const messageOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
