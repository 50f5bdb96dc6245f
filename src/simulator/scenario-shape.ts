/** What was expected at a field of a scenario, and what was found there. */
export interface Mismatch {
  readonly field: string;
  readonly expected: string;
  readonly found: string;
}

/** A check of plain data: adds what does not fit. */
export type Shape = (value: unknown, field: string, found: Mismatch[]) => void;

export const text: Shape = (value, field, found) => {
  if (typeof value !== "string" || value.trim() === "") report(value, field, "a text", found);
};

export const yesOrNo: Shape = (value, field, found) => {
  if (typeof value !== "boolean") report(value, field, "true or false", found);
};

/** ISO 8601 date with or without a time of day. */
export const moment: Shape = (value, field, found) => {
  const fits =
    typeof value === "string" && /^\d{4}-\d\d-\d\d/.test(value) && !Number.isNaN(Date.parse(value));
  if (!fits) report(value, field, "a date, ISO 8601", found);
};

export const number =
  (min = -1e9, max = 1e9): Shape =>
  (value, field, found) => {
    // asks for what must be true, so that NaN does not pass
    if (!(typeof value === "number" && value >= min && value <= max))
      report(value, field, `a number from ${min} to ${max}`, found);
  };

export const word =
  (...words: readonly (string | number)[]): Shape =>
  (value, field, found) => {
    if (!words.some((each) => each === value)) report(value, field, words.join(", "), found);
  };

export const list =
  (of: Shape): Shape =>
  (value, field, found) => {
    if (!Array.isArray(value)) return report(value, field, "a list", found);
    for (const [i, entry] of value.entries()) of(entry, `${field}[${i}]`, found);
  };

/** Any object, looked into elsewhere. */
export const anyRecord: Shape = (value, field, found) => {
  if (!isRecord(value)) report(value, field, "an object", found);
};

/** An object with these fields and no others. */
export const record =
  (required: Readonly<Record<string, Shape>>, optional: Readonly<Record<string, Shape>> = {}): Shape =>
  (value, field, found) => {
    if (!isRecord(value)) return report(value, field, "an object", found);
    const path = (key: string) => (field === "" ? key : `${field}.${key}`);
    for (const [key, shape] of Object.entries(required)) shape(value[key], path(key), found);
    for (const [key, entry] of Object.entries(value)) {
      if (Object.hasOwn(required, key)) continue;
      if (!Object.hasOwn(optional, key)) report(entry, path(key), "no such field", found);
      else optional[key]!(entry, path(key), found);
    }
  };

/** Objects told apart by the word in one of their fields. */
export const oneOf =
  (key: string, shapes: Readonly<Record<string, Shape>>): Shape =>
  (value, field, found) => {
    if (!isRecord(value)) return report(value, field, "an object", found);
    const name = value[key];
    if (typeof name === "string" && Object.hasOwn(shapes, name)) shapes[name]!(value, field, found);
    else report(name, `${field}.${key}`, Object.keys(shapes).join(", "), found);
  };

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function report(value: unknown, field: string, expected: string, found: Mismatch[]): void {
  const text = value === undefined ? "nothing" : (JSON.stringify(value) ?? String(value));
  found.push({ field, expected, found: text.length > 60 ? `${text.slice(0, 57)}...` : text });
}
