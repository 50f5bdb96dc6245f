import { hostname } from "node:os";
import { fail, type Issue, ok, type Result } from "#core";
import { appendStatements } from "#exchange";
import { type Entry, positionIn, type Signer, type Statement, walkChains } from "#records";
import type { Store } from "#store";
import { version } from "#text";

/**
 * Writes statements into a job of a log, signed by this device; its announcement comes first where the job does not know it yet.
 *
 * @param held entries of the job that are in the log.
 * @returns how many entries were added.
 */
export async function appendToLog(
  store: Store,
  job: string,
  held: readonly Entry[],
  statements: readonly Statement[],
  signer: Signer,
): Promise<Result<number, readonly Issue[]>> {
  if (statements.length === 0) return ok(0);
  const position = positionIn(walkChains(held), job, signer.publicKey);
  const announcement: Statement = {
    author: statements[0]!.author,
    kind: "device",
    body: { public_key: signer.publicKey, name: hostname() || "command line", program: `toeline ${version}` },
  };
  const own = held.filter(({ device }) => device === signer.publicKey);
  const session = own.reduce((highest, { clock }) => Math.max(highest, clock.session), 0) + 1;
  const pen = {
    position,
    signer,
    clock: () => ({ wall: new Date().toISOString(), monotonic_ms: performance.now(), session }),
  };
  const all = position.last === undefined ? [announcement, ...statements] : statements;
  const written = await appendStatements(all, pen, async (entries) => {
    const appended = await store.append(job, entries, new Date().toISOString());
    if (!appended.ok) return fail([appended.error]);
    const { refused } = appended.value;
    return refused.length > 0 ? fail(refused.map(({ issue }) => issue)) : ok(true);
  });
  return written.ok ? ok(written.value.entries) : written;
}
