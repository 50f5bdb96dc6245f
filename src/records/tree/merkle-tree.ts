import { contract } from "#core";
import { sha256Hex } from "../crypto/hash.ts";
import { bytesFromHex } from "../crypto/hex.ts";

/**
 * Hash of one leaf: SHA-256(0x00, data). Here the data of a leaf are the 32 bytes of an entry's id.
 *
 * Source: RFC 6962, section 2.1.
 * Checked against: test/published/rfc-6962
 */
export const leafHash = (dataHex: string): Promise<string> => sha256Hex(bytesFromHex(`00${dataHex}`));

/** Hash of an inner node: SHA-256(0x01, left, right). Source: RFC 6962, section 2.1. */
export const nodeHash = (left: string, right: string): Promise<string> =>
  sha256Hex(bytesFromHex(`01${left}${right}`));

/** Root of the tree without leaves: SHA-256 of nothing. */
export const EMPTY_ROOT = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

/**
 * Root of the tree over leaf hashes in their order.
 *
 * Worked out level by level; a node without a neighbour moves up as it is, which gives the same tree as splitting at the largest
 * power of two.
 *
 * Source: RFC 6962, section 2.1.
 * Checked against: test/published/rfc-6962
 */
export async function treeRoot(leaves: readonly string[]): Promise<string> {
  let level = leaves;
  while (level.length > 1) level = await levelAbove(level);
  return level[0] ?? EMPTY_ROOT;
}

function levelAbove(level: readonly string[]): Promise<readonly string[]> {
  const pairs = Array.from({ length: Math.ceil(level.length / 2) }, (_, i) => {
    const [left, right] = level.slice(2 * i, 2 * i + 2);
    return right === undefined ? Promise.resolve(left!) : nodeHash(left!, right);
  });
  return Promise.all(pairs);
}

/** The whole subtrees that a tree is made of, largest first: all that is needed to let it grow. */
export interface TreeFront {
  readonly size: number;
  readonly peaks: readonly string[];
}

export const EMPTY_FRONT: TreeFront = { size: 0, peaks: [] };

/** The front after one more leaf. Costs as many hashes as the new size has zeros at its end, so one on average. */
export async function appendLeaf(front: TreeFront, leaf: string): Promise<TreeFront> {
  const peaks = [...front.peaks];
  let node = leaf;
  for (let size = front.size; size % 2 === 1; size = (size - 1) / 2)
    node = await nodeHash(peaks.pop()!, node);
  return { size: front.size + 1, peaks: [...peaks, node] };
}

/** Root of the tree that a front stands for. */
export async function frontRoot({ peaks }: TreeFront): Promise<string> {
  let root = peaks.at(-1);
  if (root === undefined) return EMPTY_ROOT;
  for (const peak of peaks.slice(0, -1).reverse()) root = await nodeHash(peak, root);
  return root;
}

/** The largest power of two below a size of at least 2. */
export function splitOf(size: number): number {
  contract(size >= 2, `splitOf: ${size} leaves cannot be split`);
  let split = 1;
  while (2 * split < size) split *= 2;
  return split;
}
