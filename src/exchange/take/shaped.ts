import { type JsonObject, type JsonValue, kindOf } from "#records";
import { AS_WRITTEN } from "../shared/names.ts";
import { filled } from "../shared/objects.ts";

/** Whether an entry of the kind takes the body. */
export const isTaken = (kind: string, body: JsonObject): boolean => kindOf(kind)?.read(body).ok === true;

/**
 * The fields as an entry of the kind takes them: those that it would refuse stand in `as_written`, so that nothing is lost and
 * the folder is written again with what is wrong in it.
 *
 * @param ids what the body says besides the fields.
 */
export function shapedFields(kind: string, ids: JsonObject, fields: JsonObject): JsonObject {
  const reserved = Object.hasOwn(fields, AS_WRITTEN) || Object.hasOwn(fields, "withdrawn");
  if (!reserved && (Object.keys(fields).length === 0 || isTaken(kind, { ...ids, set: fields })))
    return fields;
  const good: Record<string, JsonValue> = {};
  const bad: Record<string, JsonValue> = {};
  for (const [field, value] of Object.entries(fields)) {
    const isFree = field !== AS_WRITTEN && field !== "withdrawn";
    (isFree && isTaken(kind, { ...ids, set: { [field]: value } }) ? good : bad)[field] = value;
  }
  return filled({ ...good, [AS_WRITTEN]: Object.keys(bad).length > 0 ? bad : undefined });
}
