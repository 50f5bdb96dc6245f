import { createVerifier, type Verifier } from "#records";
import type { Office } from "../office.ts";
import { type ChainEnds, createChainEnds } from "./chain-ends.ts";
import { createDigests, type Digests } from "./digests.ts";

/** What sending and fetching need of an office. */
export type SyncOffice = Pick<Office, "store" | "id" | "era" | "access" | "clock" | "announce" | "onGrowth">;

/** What the routes of sending and fetching share within one process. */
export interface SyncParts {
  readonly office: SyncOffice;
  readonly verifier: Verifier;
  readonly chainEnds: ChainEnds;
  readonly digests: Digests;
}

export const syncParts = (office: SyncOffice): SyncParts => ({
  office,
  verifier: createVerifier(),
  chainEnds: createChainEnds(office.store),
  digests: createDigests(office.store),
});
