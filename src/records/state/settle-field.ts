import type { OrderedEntry } from "../chain/causal-order.ts";
import type { Entry } from "../entry/entry.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import type { JsonValue } from "../json/json-value.ts";
import type { FieldState, WrittenBy } from "./job-state.ts";

/** One entry giving one field a value. */
export interface Write {
  readonly from: OrderedEntry;
  readonly value: JsonValue;
}

export const writtenBy = (entry: Entry): WrittenBy => ({
  entry: entry.id,
  device: entry.device,
  sequence: entry.sequence,
  author: entry.author,
  wall: entry.clock.wall,
});

/**
 * The values a field has after a number of writes: those that no other writer had seen before writing. Two devices that wrote
 * the same value agree; they are no conflict.
 *
 * @param writes in causal order, at least one. Where an entry writes a field twice, the last counts.
 */
export function settleField(writes: readonly Write[]): FieldState {
  const overtaken = overtakenUpTo(writes);
  const open = writes.filter(({ from: { entry } }, i) => {
    const isRepeated = writes[i + 1]?.from.entry.id === entry.id;
    return !isRepeated && entry.sequence > (overtaken.get(entry.device) ?? 0);
  });
  const values = new Map<string, { value: JsonValue; by: WrittenBy[] }>();
  for (const { from, value } of open.length > 0 ? open : writes) {
    const text = canonicalJson(value);
    const key = text.ok ? text.value : from.entry.id;
    const same = values.get(key);
    if (same === undefined) values.set(key, { value, by: [writtenBy(from.entry)] });
    else same.by.push(writtenBy(from.entry));
  }
  return [...values.values()];
}

/** By device, the number up to which somebody who wrote the field had seen its entries before writing. */
function overtakenUpTo(writes: readonly Write[]): ReadonlyMap<string, number> {
  const upTo = new Map<string, number>();
  const raise = (device: string, sequence: number) =>
    upTo.set(device, Math.max(sequence, upTo.get(device) ?? 0));
  for (const { from } of writes) {
    raise(from.entry.device, from.entry.sequence - 1);
    for (const [device, sequence] of from.known) raise(device, sequence);
  }
  return upTo;
}
