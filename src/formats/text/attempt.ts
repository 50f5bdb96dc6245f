import { fail, ok, type Result } from "#core";

/**
 * Calls a foreign function that reports bad data by throwing, and returns the outcome as a Result instead.
 *
 * The only place of this layer that catches: for decoders and archive readers whose input is outside data.
 */
export function attempt<T>(read: () => T): Result<T, string> {
  try {
    return ok(read());
  } catch (thrown) {
    return fail(messageOf(thrown));
  }
}

/** The same for a function that answers later. */
export function attemptLater<T>(read: () => Promise<T>): Promise<Result<T, string>> {
  const started = attempt(read);
  if (!started.ok) return Promise.resolve(started);
  return started.value.then(
    (value) => ok(value),
    (thrown: unknown) => fail(messageOf(thrown)),
  );
}

const messageOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
