import type { ChainPosition } from "../entry/chain-position.ts";
import type { ChainEnd } from "../entry/entry.ts";
import { type Chains, chainEnds } from "./walk-chains.ts";

/**
 * Where a device stands in a job, from the chains held: what it needs to write its next entry. What it has said it has seen is
 * taken from its own entries, so that nothing has to be kept beside the log.
 */
export function positionIn(chains: Chains, job: string, device: string): ChainPosition {
  const { [device]: last, ...held } = chainEnds(chains);
  const declared: Record<string, ChainEnd> = {};
  for (const entry of chains.get(device)?.followed ?? [])
    for (const seen of entry.seen) declared[seen.device] = { sequence: seen.sequence, id: seen.id };
  return { job, device, last, declared, held };
}
