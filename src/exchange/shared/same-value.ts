import { canonicalJson, type JsonValue } from "#records";

/** Whether two values say the same, whatever the order of their keys. */
export function isSameValue(a: JsonValue | undefined, b: JsonValue | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  const [one, other] = [canonicalJson(a), canonicalJson(b)];
  return one.ok && other.ok && one.value === other.value;
}
