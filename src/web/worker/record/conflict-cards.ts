import type { Language } from "#core";
import { type Entry, type JsonValue, kindOf } from "#records";
import { fieldsWords } from "../../words/fields/words.ts";
import { wordsIn } from "../../words/words-in.ts";
import type { ConflictCard } from "../desk-record.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { entriesById } from "../review/log-lookup.ts";
import { settlingStatement } from "../write/settling-statement.ts";
import { conflictEffects, type ReadBlob } from "./conflict-effects.ts";
import { fieldText, unitOfField, valueText } from "./field-text.ts";
import { deviceName, personName, thingText } from "./names.ts";

/** Things whose fields hold one number or text each, so that another one can be typed. */
const TYPED = /^(?:job|element|tube|instrument)(?:\/|$)/;

/** Every field that people have changed without knowing of each other, with what each value means for the results. */
export async function conflictCards(
  now: JobNow,
  language: Language,
  readBlob: ReadBlob,
): Promise<readonly ConflictCard[]> {
  const word = wordsIn(fieldsWords, language);
  const { state } = now.log;
  const cards: ConflictCard[] = [];
  for (const { thing, field } of state.conflicts) {
    const values = state.things[thing]?.fields[field] ?? [];
    const before = valueBefore(now, thing, field);
    const { effects, leftOut } = await conflictEffects(now, { thing, field }, readBlob);
    cards.push({
      thing,
      field,
      thingText: thingText(thing, state, word),
      fieldText: fieldText(field, word),
      values: values.map(({ value, by }, i) => ({
        value,
        text: valueText(field, value, language, word),
        by: by.map(({ author, device, wall, entry }) => ({
          author: personName(state, author),
          deviceName: deviceName(state, device),
          device,
          wall,
          entry,
        })),
        isUsed: i === values.length - 1,
      })),
      before: before === undefined ? undefined : valueText(field, before, language, word),
      edit: editOf(
        thing,
        field,
        values.map(({ value }) => value),
      ),
      effects,
      effectsLeftOut: leftOut,
    });
  }
  return cards;
}

function editOf(thing: string, field: string, values: readonly JsonValue[]): ConflictCard["edit"] {
  if (!TYPED.test(thing) || settlingStatement(thing, field, null) === undefined) return undefined;
  if (values.every((value) => typeof value === "number" || value === null))
    return { kind: "number", unit: unitOfField(field) ?? "" };
  return values.every((value) => typeof value === "string" || value === null) ? { kind: "text" } : undefined;
}

/** What the field was before the values that are in conflict: the last one that all of their writers had seen. */
function valueBefore({ log }: JobNow, thing: string, field: string): JsonValue | undefined {
  const known = log.state.things[thing];
  const byId = entriesById(log);
  const open = new Set(known?.fields[field]?.flatMap(({ by }) => by.map(({ entry }) => entry)));
  const first = known?.entries.findIndex((id) => open.has(id)) ?? -1;
  const earlier = known?.entries.slice(0, Math.max(0, first)) ?? [];
  for (const id of earlier.toReversed()) {
    const value = valueGiven(byId.get(id), thing, field);
    if (value !== undefined) return value;
  }
  return undefined;
}

function valueGiven(entry: Entry | undefined, thing: string, field: string): JsonValue | undefined {
  const read = entry && kindOf(entry.kind)?.read(entry.body);
  const effect = read?.ok
    ? read.value.findLast((each) => each.does === "set" && each.thing === thing && each.field === field)
    : undefined;
  return effect?.value;
}
