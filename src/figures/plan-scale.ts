import { scaleLinear } from "d3-scale";
import type { DesignElement } from "#core";
import type { AxisParts } from "./axis-parts.ts";
import { type OffsetUnit, offsetUnit } from "./offset-scale.ts";
import { BODY_TOP } from "./page.ts";
import type { Box } from "./place-labels.ts";
import { planAllowances } from "./plan-allowances.ts";
import { ellipseLookup } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

const SIDE = 436;
const LEFT = 70;
const TOP = BODY_TOP + 16;

/** The square of the plan on the page, and its middle: the design axis. */
export const PLAN_FRAME: Box = { left: LEFT, top: TOP, right: LEFT + SIDE, bottom: TOP + SIDE };
export const PLAN_MIDDLE = { x: LEFT + SIDE / 2, y: TOP + SIDE / 2 } as const;

/** Half the width of the drawing is at least this, metres: a hole without any offset still gets a scale. */
const SMALLEST_HALF_M = 0.01;
/** Empty rim, as a share of what is drawn. */
const RIM = 1.12;
const TARGET_RINGS = 4;

/** From metres north and east of the design axis to the page. One scale for both. */
export interface PlanScale {
  readonly halfM: number;
  /** from ring to ring and tick to tick, metres: a round number */
  readonly stepM: number;
  readonly unit: OffsetUnit;
  x(eastM: number): number;
  y(northM: number): number;
  length(metres: number): number;
}

/** Fits offsets, outlines and allowances into the square. */
export function planScale(view: ElementView, parts: AxisParts): PlanScale {
  const outlineM = view.outline ? sectionReachM(view.element) : 0;
  const ellipseOf = ellipseLookup(view);
  const circles = planAllowances(view, parts).flatMap((allowance) => allowance.circles);
  const halfM =
    RIM *
    Math.max(
      SMALLEST_HALF_M,
      Math.max(0, ...parts.rows.map((row) => row.offsetM)) + outlineM,
      ...parts.rows.map((row) => row.offsetM + (ellipseOf(row)?.semiMajor95M ?? 0)),
      ...circles.filter(({ drawn }) => drawn).map(({ radiusM }) => radiusM),
    );
  const unitsPerM = SIDE / 2 / halfM;
  const stepM = scaleLinear([0, halfM], [0, 1]).ticks(TARGET_RINGS)[1]!;
  return {
    halfM,
    stepM,
    unit: offsetUnit(halfM, stepM),
    x: (eastM) => PLAN_MIDDLE.x + eastM * unitsPerM,
    y: (northM) => PLAN_MIDDLE.y - northM * unitsPerM,
    length: (metres) => metres * unitsPerM,
  };
}

function sectionReachM({ section }: DesignElement): number {
  if (section === undefined) return 0;
  return section.shape === "round" ? section.diameterM / 2 : Math.hypot(section.lengthM, section.widthM) / 2;
}
