/** What was understood of a typed number. */
export type TypedNumber =
  | { readonly kind: "empty" }
  | { readonly kind: "number"; readonly value: number; readonly decimals: number }
  /** more than one decimal mark: asked about, never guessed */
  | { readonly kind: "two-marks" }
  | { readonly kind: "no-number" }
  /** a unit was typed that is not the field's */
  | { readonly kind: "other-unit"; readonly found: string };

const MINUS = /[−–—‐-]/g;
// spaces that keyboards, spreadsheets and web pages put into numbers
const SPACES = /[\s\u00a0\u2009\u202f]/g;

/**
 * Reads a number as people type it: comma or point is the decimal mark, there is no thousands mark, any dash is a minus, the unit
 * may stand behind it.
 *
 * @param unit of the field, as it is shown.
 */
export function readTypedNumber(text: string, unit: string): TypedNumber {
  const bare = text.replaceAll(SPACES, "").replaceAll(MINUS, "-");
  if (bare === "") return { kind: "empty" };
  const [, number = "", rest = ""] = /^([-+]?[\d.,]*)(.*)$/.exec(bare) ?? [];
  if (rest !== "" && rest.toLowerCase() !== unit.replaceAll(SPACES, "").toLowerCase())
    return /\d/.test(number) && /^[a-z°/%]+$/i.test(rest)
      ? { kind: "other-unit", found: rest }
      : { kind: "no-number" };
  if ((number.match(/[.,]/g) ?? []).length > 1) return { kind: "two-marks" };
  const plain = number.replace(",", ".");
  if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain)) return { kind: "no-number" };
  return { kind: "number", value: Number(plain), decimals: plain.split(".")[1]?.length ?? 0 };
}
