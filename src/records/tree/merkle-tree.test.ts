import { describe, expect, test } from "vitest";
import { createRandom } from "#simulator";
import published from "../../../test/published/rfc-6962/case.json" with { type: "json" };
import { sha256Hex, utf8 } from "../crypto/hash.ts";
import {
  appendLeaf,
  EMPTY_FRONT,
  EMPTY_ROOT,
  frontRoot,
  leafHash,
  nodeHash,
  splitOf,
  treeRoot,
} from "./merkle-tree.ts";
import { consistencyProof, inclusionProof, verifyConsistency, verifyInclusion } from "./proofs.ts";

const SEED = 6962;
const leaves = await Promise.all(published.leaves.map(leafHash));
const rootAt = (size: number) => published.roots[size - 1]!;

/** The definition of the RFC as it stands there, slow and plain. */
async function rootByDefinition(all: readonly string[]): Promise<string> {
  if (all.length === 0) return EMPTY_ROOT;
  if (all.length === 1) return all[0]!;
  const split = splitOf(all.length);
  return nodeHash(await rootByDefinition(all.slice(0, split)), await rootByDefinition(all.slice(split)));
}

describe("published values of RFC 6962", () => {
  test("hash of nothing, of a leaf, of a node", async () => {
    expect(await sha256Hex(utf8(""))).toBe(published.emptyRoot);
    expect(await treeRoot([])).toBe(published.emptyRoot);
    expect(await leafHash(published.leafHash.data)).toBe(published.leafHash.hash);
    const { left, right, hash } = published.nodeHash;
    expect(await nodeHash(left, right)).toBe(hash);
  });

  test.each(published.roots.map((root, i) => [i + 1, root] as const))(
    "root over %s leaves",
    async (size, root) => {
      expect(await treeRoot(leaves.slice(0, size))).toBe(root);
    },
  );

  test.each(published.inclusion)("leaf $index of $size", async ({ index, size, proof }) => {
    expect(await inclusionProof(leaves.slice(0, size), index)).toEqual(proof);
    expect(await verifyInclusion(leaves[index]!, index, size, proof, rootAt(size))).toBe(true);
  });

  test.each(published.consistency)("$older within $newer", async ({ older, newer, proof }) => {
    expect(await consistencyProof(leaves.slice(0, newer), older)).toEqual(proof);
    const [before, after] = [older, newer].map((size) => ({ size, root: rootAt(size) }));
    expect(await verifyConsistency(before!, after!, proof)).toBe(true);
  });

  test("a leaf in a tree of millions", async () => {
    const { leafHash: leaf, index, size, proof, root } = published.large;
    expect(await verifyInclusion(leaf, index, size, proof, root)).toBe(true);
    expect(await verifyInclusion(leaf, index + 1, size, proof, root)).toBe(false);
    expect(await verifyInclusion(leaf, index, size, proof.slice(1), root)).toBe(false);
  });
});

describe("trees of every size", () => {
  test("grow leaf by leaf to the root of the definition", async () => {
    let front = EMPTY_FRONT;
    const all: string[] = [];
    for (let size = 0; size <= 40; size++) {
      const root = await rootByDefinition(all);
      expect(await treeRoot(all), `${size} leaves`).toBe(root);
      expect(await frontRoot(front), `${size} leaves`).toBe(root);
      const leaf = await leafHash(await sha256Hex(utf8(String(size))));
      front = await appendLeaf(front, leaf);
      all.push(leaf);
    }
    expect(front.size).toBe(41);
  });

  test(`prove what is in them and nothing else (seed ${SEED})`, async () => {
    const random = createRandom(SEED);
    const draw = (below: number) => Math.floor(random.uniform() * below);
    const all = await Promise.all(
      Array.from({ length: 70 }, async (_, i) => leafHash(await sha256Hex(utf8(`${i}`)))),
    );
    for (let round = 0; round < 150; round++) {
      const size = 2 + draw(68);
      const some = all.slice(0, size);
      const root = await treeRoot(some);
      const index = draw(size);
      const path = await inclusionProof(some, index);
      expect(await verifyInclusion(some[index]!, index, size, path, root)).toBe(true);
      const other = (index + 1 + draw(size - 1)) % size;
      expect(await verifyInclusion(some[other]!, index, size, path, root)).toBe(false);
      expect(await verifyInclusion(some[index]!, other, size, path, root)).toBe(false);

      const older = 1 + draw(size - 1);
      const proof = await consistencyProof(some, older);
      const before = { size: older, root: await treeRoot(some.slice(0, older)) };
      const after = { size, root };
      expect(await verifyConsistency(before, after, proof)).toBe(true);
      for (const wrong of wrongProofs(proof, root))
        expect(await verifyConsistency(before, after, wrong), `${older} in ${size}`).toBe(false);
      expect(await verifyConsistency(after, before, proof)).toBe(false);
      expect(
        await verifyConsistency(
          { size: older, root: all[0]! === before.root ? root : all[0]! },
          after,
          proof,
        ),
      ).toBe(false);
    }
  });
});

/** A proof with something put in, taken out or changed. */
const wrongProofs = (proof: readonly string[], root: string): readonly (readonly string[])[] => [
  [...proof, root],
  [root, ...proof],
  proof.slice(0, -1),
  ...proof.map((hash, i) => proof.with(i, `${hash[0] === "0" ? "1" : "0"}${hash.slice(1)}`)),
];
