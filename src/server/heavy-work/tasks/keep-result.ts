import { type Issue, ok, type Result } from "#core";
import { type JsonObject, sha256Hex } from "#records";
import { keepBlobs, type Store } from "#store";

/** Keeps a file that a task made as a blob. @returns what the result of the task says about it. */
export async function keepResult(
  store: Store,
  bytes: Uint8Array<ArrayBuffer>,
  about: { readonly name: string; readonly type: string },
): Promise<Result<JsonObject, Issue>> {
  const blob = await sha256Hex(bytes);
  const kept = await keepBlobs(store, new Map([[blob, bytes]]));
  return kept.ok ? ok({ blob, bytes: bytes.length, ...about }) : kept;
}
