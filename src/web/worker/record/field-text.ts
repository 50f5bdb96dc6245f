import type { Language } from "#core";
import type { JsonObject, JsonValue } from "#records";
import { formatNumber } from "#text";
import { fieldsWords } from "../../words/fields/words.ts";
import type { FieldWords } from "./names.ts";

type FieldKey = keyof (typeof fieldsWords)["en"];

const UNITS = [
  { ending: "_deg", unit: "°", space: "", decimals: 2 },
  { ending: "_mm", unit: "mm", space: " ", decimals: 1 },
  { ending: "_m", unit: "m", space: " ", decimals: 3 },
  { ending: "_kn", unit: "kN", space: " ", decimals: 0 },
] as const;
const MOST_DECIMALS = 9;
const LONGEST = 160;

/** The unit that the name of a field carries: "easting_m" is in metres. */
export const unitOfField = (field: string): string | undefined => shownUnit(field)?.unit;

const shownUnit = (field: string) => UNITS.find(({ ending }) => field.endsWith(ending));

/** Readings of one row: "row/ENTRY/4". */
export const ROW = /^row\/([0-9a-f]{64})\/(\d+)$/;
const QUESTION = /^decision\/(.+)$/;

/** What a field is called: "Easting". Fields that no text is written for keep their own name. */
export function fieldText(field: string, word: FieldWords): string {
  const row = ROW.exec(field)?.[2];
  if (row !== undefined) return word("row", { row: Number(row) + 1 });
  const question = QUESTION.exec(field)?.[1];
  if (question !== undefined) return word("question", { question });
  return Object.hasOwn(fieldsWords.en, field) ? word(field as FieldKey) : field;
}

/** A value of a field for people, with its unit and with as many digits as it was written with. */
export function valueText(field: string, value: JsonValue, language: Language, word: FieldWords): string {
  if (value === null) return word("nothing");
  if (typeof value === "boolean") return word(value ? "yes" : "no");
  if (typeof value === "number") return numberText(field, value, language);
  if (typeof value === "string") return value;
  if (ROW.test(field)) return rowText(value as JsonObject, word);
  const text = Array.isArray(value)
    ? value.map((each: JsonValue) => valueText("", each, language, word)).join(", ")
    : Object.entries(value as JsonObject)
        .map(([key, inner]) => `${fieldText(key, word)}: ${valueText(key, inner, language, word)}`)
        .join("; ");
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;
}

function numberText(field: string, value: number, language: Language): string {
  const shown = shownUnit(field);
  const written = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
  const decimals = Math.min(MOST_DECIMALS, Math.max(written, shown?.decimals ?? 0));
  const number = formatNumber(value, decimals, language);
  return shown === undefined ? number : `${number}${shown.space}${shown.unit}`;
}

function rowText(said: JsonObject, word: FieldWords): string {
  const state = word(said["aside"] === true ? "aside" : "counts");
  const reason = said["reason"];
  return typeof reason === "string" && reason !== "" ? `${state}: ${reason}` : state;
}
