import type { JsonObject, JsonValue } from "#records";
import type { NewStatement } from "../desk.ts";

/** Things whose fields are set one by one, and what their ids are called in an entry. */
const SET_BY_FIELD: Readonly<Record<string, readonly string[]>> = {
  job: [],
  element: ["element"],
  tube: ["element", "tube"],
  criterion: ["criterion"],
  instrument: ["instrument"],
};

/** The entry that gives a field of a thing one value; undefined where a field of it cannot be set by itself. */
export function settlingStatement(thing: string, field: string, value: JsonValue): NewStatement | undefined {
  const [type = "", ...ids] = thing.split("/").map(decodeURIComponent);
  const names = SET_BY_FIELD[type];
  if (names !== undefined) {
    const named = Object.fromEntries(names.map((name, i) => [name, ids[i] ?? ""]));
    return { kind: type, body: { ...named, set: { [field]: value } } };
  }
  const [id = ""] = ids;
  const whole = value as JsonObject;
  if (type === "calibration" && field === "record")
    return { kind: type, body: { calibration: id, ...whole } };
  if (type === "person") return { kind: type, body: { person: id, name: String(value) } };
  if (type === "run" && field === "opened") return { kind: "run-opened", body: { run: id, ...whole } };
  if (type === "run" && field === "closed") return { kind: "run-closed", body: { run: id, ...whole } };
  const row = /^row\/([0-9a-f]{64})\/(\d+)$/.exec(field);
  if (type === "run" && row !== null) return rowStatement(id, row[1]!, Number(row[2]), whole);
  const question = /^decision\/(.+)$/.exec(field)?.[1];
  return question === undefined
    ? undefined
    : { kind: "decision", body: { about: thing, question, ...whole } };
}

const rowStatement = (run: string, readings: string, row: number, said: JsonObject): NewStatement => ({
  kind: said["aside"] === true ? "set-aside" : "put-back",
  body: { run, readings, rows: [row], reason: String(said["reason"] ?? "") },
});
