import { fail, ok, type Result } from "#core";

/** Turns what a library throws into a value: compilers and archive readers report bad data by throwing. */
export async function attempt<T>(work: () => T | Promise<T>): Promise<Result<T, string>> {
  try {
    return ok(await work());
  } catch (error) {
    return fail(error instanceof Error ? error.message : String(error));
  }
}
