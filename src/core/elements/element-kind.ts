import type { DesignElement } from "./element.ts";

/** What the program needs to know about a kind of element. The kind declares, everything else asks the declaration. */
export interface ElementKind {
  readonly id: string;
  /** sections that make sense for the kind; a schedule line with another one is told so */
  readonly sections: readonly ("round" | "rectangle")[];
  /** whether a section must be given in the schedule */
  readonly needsSection: boolean;
  /** bearing of the direction called "along", radians from grid north, for an element of this kind */
  alongBearingRad(element: DesignElement): number;
  readonly text: Readonly<Record<"en" | "de", { readonly name: string; readonly plural: string }>>;
}
