import { contract } from "#core";
import { isHex32 } from "../crypto/hex.ts";
import { nodeHash, splitOf, treeRoot } from "./merkle-tree.ts";

/**
 * The path that shows a leaf to be in the tree: hashes from the leaf upwards.
 *
 * @param leaves leaf hashes in their order.
 * @param index of the leaf, from 0.
 *
 * Source: RFC 6962, section 2.1.1, PATH(m, D[n]).
 * Checked against: test/published/rfc-6962
 */
export async function inclusionProof(leaves: readonly string[], index: number): Promise<readonly string[]> {
  contract(index >= 0 && index < leaves.length, `inclusionProof: no leaf ${index} among ${leaves.length}`);
  if (leaves.length === 1) return [];
  const split = splitOf(leaves.length);
  const [left, right] = [leaves.slice(0, split), leaves.slice(split)];
  return index < split
    ? [...(await inclusionProof(left, index)), await treeRoot(right)]
    : [...(await inclusionProof(right, index - split)), await treeRoot(left)];
}

/**
 * The hashes that show an older tree to be the beginning of this one.
 *
 * @param leaves leaf hashes of the newer tree.
 * @param size of the older one, at least 1.
 *
 * Source: RFC 6962, section 2.1.2, PROOF(m, D[n]).
 * Checked against: test/published/rfc-6962
 */
export async function consistencyProof(leaves: readonly string[], size: number): Promise<readonly string[]> {
  contract(size >= 1 && size <= leaves.length, `consistencyProof: no tree of ${size} in ${leaves.length}`);
  return subproof(leaves, size, true);
}

async function subproof(
  leaves: readonly string[],
  size: number,
  isOldRootKnown: boolean,
): Promise<readonly string[]> {
  if (size === leaves.length) return isOldRootKnown ? [] : [await treeRoot(leaves)];
  const split = splitOf(leaves.length);
  const [left, right] = [leaves.slice(0, split), leaves.slice(split)];
  return size <= split
    ? [...(await subproof(left, size, isOldRootKnown)), await treeRoot(right)]
    : [...(await subproof(right, size - split, false)), await treeRoot(left)];
}

const isSize = (value: number): boolean => Number.isSafeInteger(value) && value >= 0;
const half = (value: number): number => Math.floor(value / 2);

/**
 * Whether a path shows the leaf to be in the tree of that size and root.
 *
 * Source: RFC 9162, section 2.1.3.2 (RFC 6962 gives the trees, not this way of checking).
 * Checked against: test/published/rfc-6962
 */
export async function verifyInclusion(
  leaf: string,
  index: number,
  size: number,
  proof: readonly string[],
  root: string,
): Promise<boolean> {
  if (!isSize(index) || !isSize(size) || index >= size) return false;
  if (![leaf, root, ...proof].every(isHex32)) return false;
  let [at, last, node] = [index, size - 1, leaf];
  for (const hash of proof) {
    if (last === 0) return false;
    if (at % 2 === 1 || at === last) {
      node = await nodeHash(hash, node);
      while (at % 2 === 0 && at !== 0) [at, last] = [half(at), half(last)];
    } else node = await nodeHash(node, hash);
    [at, last] = [half(at), half(last)];
  }
  return last === 0 && node === root;
}

/**
 * Whether a proof shows the tree of the older size and root to be the beginning of the newer one.
 *
 * Source: RFC 9162, section 2.1.4.2.
 * Checked against: test/published/rfc-6962
 */
export async function verifyConsistency(
  older: { readonly size: number; readonly root: string },
  newer: { readonly size: number; readonly root: string },
  proof: readonly string[],
): Promise<boolean> {
  if (!isSize(older.size) || !isSize(newer.size) || older.size > newer.size || older.size < 1) return false;
  if (![older.root, newer.root, ...proof].every(isHex32)) return false;
  if (older.size === newer.size) return proof.length === 0 && older.root === newer.root;
  const isWhole = Number.isInteger(Math.log2(older.size));
  const [first, ...rest] = isWhole ? [older.root, ...proof] : proof;
  if (first === undefined) return false;
  let [at, last] = [older.size - 1, newer.size - 1];
  while (at % 2 === 1) [at, last] = [half(at), half(last)];
  let [oldNode, newNode] = [first, first];
  for (const hash of rest) {
    if (last === 0) return false;
    if (at % 2 === 1 || at === last) {
      oldNode = await nodeHash(hash, oldNode);
      newNode = await nodeHash(hash, newNode);
      while (at % 2 === 0 && at !== 0) [at, last] = [half(at), half(last)];
    } else newNode = await nodeHash(newNode, hash);
    [at, last] = [half(at), half(last)];
  }
  return last === 0 && oldNode === older.root && newNode === newer.root;
}
