import { appendLeaf, EMPTY_FRONT, EMPTY_ROOT, frontRoot, leafHash, type TreeFront } from "#records";

/**
 * Roots of the job's tree when it had so many entries, in one pass: as `checkAgainstHead` for many heads at once.
 *
 * @param ids in the order of arrival.
 * @returns root by size; sizes that were not reached are left out.
 */
export async function rootsAt(
  ids: readonly string[],
  sizes: Iterable<number>,
): Promise<ReadonlyMap<number, string>> {
  const wanted = new Set(sizes);
  const roots = new Map<number, string>();
  if (wanted.has(0)) roots.set(0, EMPTY_ROOT);
  let front: TreeFront = EMPTY_FRONT;
  for (const id of ids) {
    front = await appendLeaf(front, await leafHash(id));
    if (wanted.has(front.size)) roots.set(front.size, await frontRoot(front));
  }
  return roots;
}
