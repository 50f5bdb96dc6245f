import { z } from "zod";
import { fail, type Issue, ok, type Result } from "#core";
import { utf8 } from "../crypto/hash.ts";
import { isHex32, isHex64 } from "../crypto/hex.ts";
import type { Signer, Verifier } from "../crypto/keys.ts";
import { wallTimeSchema } from "../entry/entry-schema.ts";
import { error } from "../issue.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { leafHash, treeRoot } from "./merkle-tree.ts";

export const HEAD_FORMAT = "toeline-head/1";

const schema = z.looseObject({
  format: z.literal(HEAD_FORMAT),
  job: z.string().min(1).max(100),
  size: z.number().int().min(0),
  root: z.string().refine(isHex32, "64 lower-case hexadecimal digits"),
  at: wallTimeSchema,
  key: z.string().refine(isHex32, "64 lower-case hexadecimal digits"),
  signature: z.string().refine(isHex64, "128 lower-case hexadecimal digits"),
});

/**
 * The head of a job's tree, signed by the server that keeps the order of arrival: so many entries, with this root, at this time.
 * Printed on a report or kept by somebody else, it makes a cut tail visible.
 */
export type TreeHead = z.output<typeof schema>;

/** The root over entries in their order of arrival. */
export async function rootOfIds(ids: readonly string[]): Promise<string> {
  return treeRoot(await Promise.all(ids.map(leafHash)));
}

/** Signs how far a job's tree has grown. */
export async function signHead(
  head: { readonly job: string; readonly size: number; readonly root: string; readonly at: string },
  signer: Signer,
): Promise<Result<TreeHead, Issue>> {
  const { job, size, root, at } = head;
  const content = { format: HEAD_FORMAT, job, size, root, at, key: signer.publicKey } as const;
  const text = canonicalJson(content);
  if (!text.ok) return text;
  return ok({ ...content, signature: await signer.sign(utf8(text.value)) });
}

/**
 * Checks a head from outside by itself.
 *
 * Errors: records.head-shape, records.head-signature.
 */
export async function checkHead(raw: unknown, verifier: Verifier): Promise<Result<TreeHead, Issue>> {
  const shaped = schema.safeParse(raw);
  if (!shaped.success) {
    const [first] = shaped.error.issues;
    const field = first?.path.join(".") ?? "";
    return fail(error("records.head-shape", { field, found: first?.message ?? "" }, field));
  }
  const { signature, ...content } = shaped.data;
  const text = canonicalJson(content);
  if (!text.ok) return text;
  if (await verifier.verify(content.key, utf8(text.value), signature)) return ok(shaped.data);
  return fail(error("records.head-signature", { size: content.size }));
}

/**
 * Whether entries in their order of arrival begin with what a head names.
 *
 * Errors: records.head-cut (fewer entries than the head counts), records.head-mismatch.
 */
export async function checkAgainstHead(
  ids: readonly string[],
  head: { readonly size: number; readonly root: string },
): Promise<Result<true, Issue>> {
  if (ids.length < head.size)
    return fail(error("records.head-cut", { found: ids.length, expected: head.size }));
  if ((await rootOfIds(ids.slice(0, head.size))) === head.root) return ok(true);
  return fail(error("records.head-mismatch", { size: head.size }));
}
