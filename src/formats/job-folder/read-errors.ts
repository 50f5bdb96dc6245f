import { budgetKeys, type DeclaredError, sourceValueToSi } from "#core";
import type { Finder } from "../finding/finder.ts";
import { pathOfKey } from "../json/parse-json.ts";
import { tellUnknownKey } from "./check-item.ts";
import type { ErrorsInput } from "./schema/basics.ts";

/**
 * Standard values of errors that the job declares for an instrument or a run, in place of the usual ones.
 *
 * @param field path of the record, e.g. "instruments[0].errors".
 * @returns values in SI and radians. Warning: formats.json-unknown-key.
 */
export function readErrors(input: ErrorsInput | undefined, field: string, found: Finder): DeclaredError[] {
  return Object.entries(input ?? {}).flatMap(([key, given]) => {
    const source = budgetKeys.get(key);
    if (source === undefined) {
      tellUnknownKey(pathOfKey(field, key), key, [...budgetKeys.keys()], found);
      return [];
    }
    const { value, distribution } =
      typeof given === "number" ? { value: given, distribution: undefined } : given;
    return [{ source, value: sourceValueToSi(source, value), distribution }];
  });
}
