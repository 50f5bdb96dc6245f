import { contract, fail, type Issue, ok, type Result } from "#core";
import type { Chains } from "../chain/walk-chains.ts";
import { utf8 } from "../crypto/hash.ts";
import type { Signer, Verifier } from "../crypto/keys.ts";
import type { Entry } from "../entry/entry.ts";
import { error } from "../issue.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { thingKey } from "../kinds/kind.ts";
import { kindOf } from "../kinds/registry.ts";
import { SEAL_FORMAT, type Seal, type SealStatement, sealSchema } from "../kinds/seal-schema.ts";
import type { JobState } from "../state/job-state.ts";
import { rootOfIds } from "../tree/tree-head.ts";

type Covers = SealStatement["covers"];

/** What somebody is about to sign for. */
export interface SealRequest {
  readonly job: string;
  /** the thing, as `thingKey` names it: a run or a report */
  readonly about: string;
  /** what the signature means: "taken by", "checked by", "approved by" */
  readonly meaning: string;
  readonly person: string;
  readonly name: string;
  /** ISO 8601 with offset */
  readonly at: string;
}

/**
 * Signs for everything that is known about a thing now: the body of an entry of kind "sign-off".
 *
 * @returns the seal. Its statement names how many entries it covers and the root of the tree over their ids.
 *
 * Errors: records.seal-nothing, and those of canonicalJson.
 */
export async function makeSeal(
  request: SealRequest,
  chains: Chains,
  signer: Signer,
): Promise<Result<Seal, Issue>> {
  const entries = entriesAbout(request.about, chains);
  if (entries.length === 0) return fail(error("records.seal-nothing", { about: request.about }));
  const upTo: Record<string, number> = {};
  for (const { device, sequence } of entries) upTo[device] = Math.max(sequence, upTo[device] ?? 0);
  const statement = { format: SEAL_FORMAT, ...request, covers: await coversOf(entries, upTo) } as const;
  const text = canonicalJson(statement);
  if (!text.ok) return text;
  const seal = { statement, public_key: signer.publicKey, signature: await signer.sign(utf8(text.value)) };
  contract(sealSchema.safeParse(seal).success, "makeSeal: the request does not fit the format of a seal");
  return ok(seal);
}

/**
 * Checks a seal: the signature, that the key is one the person has announced, and that the entries are still those signed for.
 *
 * @param state the folded state of the same chains.
 *
 * Errors: records.seal-shape, records.seal-signature, records.seal-key, records.seal-entries-missing, records.seal-broken.
 */
export async function checkSeal(
  raw: unknown,
  chains: Chains,
  state: JobState,
  verifier: Verifier,
): Promise<Result<Seal, Issue>> {
  const shaped = sealSchema.safeParse(raw);
  if (!shaped.success)
    return fail(error("records.seal-shape", { found: shaped.error.issues[0]?.message ?? "" }));
  const { statement, public_key, signature } = shaped.data;
  const values = { about: statement.about, name: statement.name };
  const text = canonicalJson(statement);
  if (!text.ok) return text;
  if (!(await verifier.verify(public_key, utf8(text.value), signature)))
    return fail(error("records.seal-signature", values));
  const keys = state.things[thingKey("person", statement.person)]?.lists["keys"] ?? [];
  if (!keys.some(({ value }) => (value as { public_key?: unknown }).public_key === public_key))
    return fail(error("records.seal-key", values));
  const upTo = statement.covers.up_to;
  const entries = entriesAbout(statement.about, chains).filter(
    ({ device, sequence }) => sequence <= (upTo[device] ?? 0),
  );
  if (entries.length < statement.covers.count) {
    const counts = { found: entries.length, expected: statement.covers.count };
    return fail(error("records.seal-entries-missing", { ...values, ...counts }));
  }
  const now = await coversOf(entries, upTo);
  if (now.count !== statement.covers.count || now.root !== statement.covers.root)
    return fail(error("records.seal-broken", values));
  return ok(shaped.data);
}

/** The entries that have to do with a thing, by device and number: an order that does not change when others arrive. */
function entriesAbout(about: string, chains: Chains): readonly Entry[] {
  return [...chains.values()].flatMap(({ followed }) =>
    followed.filter((entry) => {
      const read = kindOf(entry.kind)?.read(entry.body);
      return read?.ok === true && read.value.some((effect) => effect.thing === about);
    }),
  );
}

const coversOf = async (
  entries: readonly Entry[],
  upTo: Readonly<Record<string, number>>,
): Promise<Covers> => ({
  up_to: { ...upTo },
  count: entries.length,
  root: await rootOfIds(entries.map((entry) => entry.id)),
});
