import type { NorthEastDown } from "../geometry/vector.ts";

/** Cross-section square to the axis. */
export type Section =
  | { readonly shape: "round"; readonly diameterM: number }
  | {
      readonly shape: "rectangle";
      readonly lengthM: number;
      readonly widthM: number;
      /** direction of the long side, radians clockwise from grid north */
      readonly orientationRad: number;
    };

/** One line of the schedule: what is to be built, where and how it leans. */
export interface DesignElement {
  readonly id: string;
  /** id in the registry of element kinds */
  readonly kind: string;
  readonly section: Section | undefined;
  /** design position of the axis at the commencing surface; down = -level */
  readonly head: NorthEastDown;
  readonly cutoffDownM: number | undefined;
  readonly toeDownM: number | undefined;
  /** design lean from vertical, radians, 0 = plumb */
  readonly rakeRad: number;
  /** where the toe goes, radians clockwise from grid north; undefined = plumb */
  readonly rakeBearingRad: number | undefined;
  readonly group: string | undefined;
  readonly sequence: number | undefined;
  readonly role: string | undefined;
  readonly loadKn: number | undefined;
  /** where the line stands in the schedule, for findings */
  readonly place: { readonly file: string; readonly line: number };
}

/** An access tube of an element. */
export interface AccessTube {
  readonly elementId: string;
  readonly id: string;
  /** as-built head of the tube; down = -level */
  readonly head: NorthEastDown;
  /** place of the tube in the element, from the element's axis, metres north and east; undefined = not known */
  readonly offsetInElement: { readonly north: number; readonly east: number } | undefined;
  readonly innerDiameterM: number | undefined;
  readonly lengthM: number | undefined;
  readonly place: { readonly file: string; readonly line: number };
}
