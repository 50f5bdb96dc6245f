import type { DesignElement } from "../elements/element.ts";
import type { CriterionRequest } from "./criterion.ts";

const KEYS: Readonly<Record<string, (element: DesignElement) => string | undefined>> = {
  kind: (element) => element.kind,
  group: (element) => element.group,
  role: (element) => element.role,
  element: (element) => element.id,
};

/** What a rule can be limited to. */
export const APPLIES_TO_KEYS: readonly string[] = Object.keys(KEYS);

/**
 * Whether a rule is for an element: every key given must be equal to the element's, or be a list that holds it.
 *
 * An empty record is for all. A key that the program does not know is for none; `checkRequest` reports it.
 *
 * Frame: none.
 * Source: docs/method/criteria.md.
 */
export function appliesTo(request: CriterionRequest, element: DesignElement): boolean {
  return Object.entries(request.appliesTo).every(([key, asked]) => {
    const own = KEYS[key]?.(element);
    return own !== undefined && (typeof asked === "string" ? asked === own : asked.includes(own));
  });
}
