import { type JobState, thingKey } from "#records";
import type { fieldsWords } from "../../words/fields/words.ts";
import type { Words } from "../../words/words-in.ts";

export type FieldWords = Words<keyof (typeof fieldsWords)["en"]>;

/** As much of a key as people compare by eye. */
const SHOWN_OF_KEY = 8;

/** How a device calls itself; the beginning of its key where it never did. */
export function deviceName(state: JobState, device: string): string {
  const name = lastField(state, thingKey("device", device), "name");
  return name ?? device.slice(0, SHOWN_OF_KEY);
}

/** The name of a person; the id where none was written down. */
export const personName = (state: JobState, id: string): string =>
  lastField(state, thingKey("person", id), "name") ?? id;

function lastField(state: JobState, thing: string, field: string): string | undefined {
  const value = state.things[thing]?.fields[field]?.at(-1)?.value;
  return typeof value === "string" && value !== "" ? value : undefined;
}

const NAMED = [
  "element",
  "tube",
  "criterion",
  "instrument",
  "calibration",
  "run",
  "report",
  "non-conformance",
] as const;

/** "Element P12", "Tube A of P12". */
export function thingText(thing: string, state: JobState, word: FieldWords): string {
  const [type = "", id = "", second = ""] = thing.split("/").map(decodeURIComponent);
  if (type === "job") return word("thing_job");
  if (type === "person") return word("thing_person", { id: personName(state, id) });
  if (type === "device") return word("thing_device", { id: deviceName(state, id) });
  const known = NAMED.find((each) => each === type);
  return word(known === undefined ? "thing_other" : `thing_${known}`, { id: id === "" ? type : id, second });
}
