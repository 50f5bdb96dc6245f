import type { Criterion } from "./criterion.ts";
import { curvature } from "./curvature.ts";
import { planPosition } from "./plan-position.ts";
import { rake } from "./rake.ts";
import { tubePassage } from "./tube-passage.ts";
import { verticality } from "./verticality.ts";

/** Every kind of criterion there is; a new one is a file and a line here. */
export const criteria: readonly Criterion[] = [planPosition, verticality, rake, curvature, tubePassage];

const byId = new Map(criteria.map((kind) => [kind.id, kind]));

/** The criterion of that kind, or undefined if there is none. */
export function criterion(kind: string): Criterion | undefined {
  return byId.get(kind);
}
