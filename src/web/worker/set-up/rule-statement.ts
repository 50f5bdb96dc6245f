import type { JsonObject, JsonValue } from "#records";
import type { NewStatement } from "../desk.ts";
import type { RuleDraft } from "../desk-set-up.ts";

/** The entry that writes a rule down. */
export const ruleStatement = ({
  id,
  kind,
  appliesTo,
  numbers,
  words,
  tables,
  source,
}: RuleDraft): NewStatement => ({
  kind: "criterion",
  body: {
    criterion: id,
    set: {
      kind,
      applies_to: appliesTo as JsonValue,
      parameters: { ...numbers, ...words, ...tables } as JsonObject,
      source: source === undefined ? null : ({ ...source } as JsonObject),
      withdrawn: false,
    },
  },
});
