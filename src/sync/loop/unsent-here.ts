import { type Issue, ok, type Result } from "#core";
import { type Entry, summarizeUnsent, type UnsentSummary } from "#records";
import type { Office, Store } from "#store";
import type { OfficeClient } from "../client/office-client.ts";

/**
 * What is not at the office, worked out from the log, also before the office has answered: then by its latest life that is
 * remembered. If nothing is, everything counts as not sent.
 *
 * @param office who it is, if it has answered.
 */
export async function unsentHere(
  store: Store,
  client: OfficeClient,
  job: string,
  office: Office | undefined,
): Promise<Result<UnsentSummary, Issue>> {
  const offices = office === undefined ? await rememberedOffices(store, client, job) : ok([office]);
  if (!offices.ok) return offices;
  let most: readonly Entry[] | undefined;
  for (const one of offices.value) {
    const unsent = await store.readNotSent(job, one);
    if (!unsent.ok) return unsent;
    if (most === undefined || unsent.value.length > most.length) most = unsent.value;
  }
  if (most !== undefined) return ok(summarizeUnsent(most));
  const all = await store.readJob(job);
  return all.ok ? ok(summarizeUnsent(all.value)) : all;
}

/** Of every office that has stood at this address, its latest life. */
async function rememberedOffices(
  store: Store,
  client: OfficeClient,
  job: string,
): Promise<Result<readonly Office[], Issue>> {
  const known = await store.readOffices(job);
  if (!known.ok) return known;
  const latest = new Map<string, Office>();
  for (const office of known.value) {
    if (!office.server.startsWith(`${client.address} `)) continue;
    const before = latest.get(office.server);
    if (before === undefined || before.era < office.era) latest.set(office.server, office);
  }
  return ok([...latest.values()]);
}
