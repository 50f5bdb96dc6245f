import type { DesignElement } from "#core";

/** Further than this from the elements that are there, and near to them when exchanged: common practice, no source. */
const FAR_M = 1000;
const NEAR_SHARE = 0.05;

const middle = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

/** Whether new elements lie far from those of the job and would lie among them with east and north exchanged. */
export function farFromTheOthers(
  elements: readonly DesignElement[],
  others: readonly DesignElement[],
): boolean {
  if (elements.length === 0 || others.length === 0) return false;
  const of = (list: readonly DesignElement[]) => ({
    east: middle(list.map(({ head }) => head.east)),
    north: middle(list.map(({ head }) => head.north)),
  });
  const [fresh, held] = [of(elements), of(others)];
  const apart = Math.hypot(fresh.east - held.east, fresh.north - held.north);
  const exchanged = Math.hypot(fresh.north - held.east, fresh.east - held.north);
  return apart > FAR_M && exchanged < NEAR_SHARE * apart;
}
