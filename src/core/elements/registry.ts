import type { ElementKind } from "./element-kind.ts";
import { accessTube } from "./kinds/access-tube.ts";
import { anchor } from "./kinds/anchor.ts";
import { barrette } from "./kinds/barrette.ts";
import { boredPile } from "./kinds/bored-pile.ts";
import { borehole } from "./kinds/borehole.ts";
import { freezeHole } from "./kinds/freeze-hole.ts";
import { groutHole } from "./kinds/grout-hole.ts";
import { micropile } from "./kinds/micropile.ts";
import { panel } from "./kinds/panel.ts";

/** Every kind of element there is; a new kind is a file in `kinds/` and a line here. */
export const elementKinds: readonly ElementKind[] = [
  boredPile,
  panel,
  barrette,
  micropile,
  anchor,
  freezeHole,
  groutHole,
  borehole,
  accessTube,
];

const byId = new Map(elementKinds.map((kind) => [kind.id, kind]));

/** The kind with that id, or undefined if there is none. */
export function elementKind(id: string): ElementKind | undefined {
  return byId.get(id);
}
