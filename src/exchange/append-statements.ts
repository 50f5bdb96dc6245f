import { type Issue, ok, type Result } from "#core";
import {
  type ChainPosition,
  createEntry,
  type Entry,
  type EntryClock,
  MAX_BATCH_ENTRIES,
  positionAfter,
  type Signer,
  type Statement,
} from "#records";

/** What is needed to write entries of one device. */
export interface Pen {
  /** where the device's chain stands, see `positionIn` */
  readonly position: ChainPosition;
  readonly signer: Signer;
  /** asked for each entry */
  readonly clock: () => EntryClock;
}

export interface AppendedStatements {
  readonly position: ChainPosition;
  readonly entries: number;
}

/**
 * Signs statements as the next entries of a device's chain and hands them on in batches, each as soon as it is full, so that
 * a large job need not be held as entries. A chain that has not begun needs the device's announcement as its first statement.
 *
 * @param append keeps a batch; the next is made after it has answered.
 * @param perBatch entries in a batch.
 * Errors: those of createEntry and of `append`. What was appended before stays: the same import goes on from there.
 */
export async function appendStatements(
  statements: Iterable<Statement>,
  { position, signer, clock }: Pen,
  append: (entries: readonly Entry[]) => Promise<Result<unknown, readonly Issue[]>>,
  perBatch: number = MAX_BATCH_ENTRIES,
): Promise<Result<AppendedStatements, readonly Issue[]>> {
  let at = position;
  let count = 0;
  let batch: Entry[] = [];
  const flush = async (): Promise<Result<unknown, readonly Issue[]>> => {
    const full = batch;
    batch = [];
    count += full.length;
    return full.length === 0 ? ok(true) : append(full);
  };
  for (const statement of statements) {
    const entry = await createEntry(at, statement, clock(), signer);
    if (!entry.ok) return entry;
    at = positionAfter(at, entry.value);
    batch.push(entry.value);
    if (batch.length < perBatch) continue;
    const kept = await flush();
    if (!kept.ok) return kept;
  }
  const kept = await flush();
  return kept.ok ? ok({ position: at, entries: count }) : kept;
}
