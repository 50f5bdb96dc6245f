import type { Language } from "#core";
import { type DisplayUnit, decimalsOf, formatQuantity, isDisplayUnit } from "./format-quantity.ts";

/** A double holds no more digits than this for the quantities of a survey; past it two values are shown as equal. */
const MOST_EXTRA_DIGITS = 9;

/** Units that people read: those of the SI, or feet and inches (international: 1 in = 0.0254 m). */
export type UnitSystem = "si" | "us";

interface Shown {
  readonly unit: DisplayUnit;
  readonly factor: number;
}

/** How people read a quantity of the core: lengths held against limits in mm or inches, ratios in mm/m or inches per foot. */
const SHOWN_AS: Readonly<Record<UnitSystem, Readonly<Record<string, Shown>>>> = {
  si: { m: { unit: "mm", factor: 1000 }, "m/m": { unit: "mm/m", factor: 1000 } },
  us: { m: { unit: "in", factor: 1 / 0.0254 }, "m/m": { unit: "in/ft", factor: 12 } },
};

/** The unit that values of a criterion's unit are shown in, and what they are multiplied by. */
export const shownAs = (unit: string, system: UnitSystem = "si"): Shown =>
  SHOWN_AS[system][unit] ?? { unit: isDisplayUnit(unit) ? unit : "1", factor: 1 };

/** A measured value or a limit alone, as people read it. `unit` is the criterion's: "m" is shown in mm, "m/m" in mm/m. */
export function formatMeasured(
  value: number,
  unit: string,
  language: Language,
  system: UnitSystem = "si",
): string {
  const shown = shownAs(unit, system);
  return formatQuantity(value * shown.factor, shown.unit, language);
}

/**
 * An uncertainty, rounded like the value beside it; where that would make it nothing, with the one digit that it takes.
 *
 * @param uncertainty >= 0, in the unit of the criterion; NaN is shown as a dash.
 */
export function formatUncertainty(
  uncertainty: number,
  unit: string,
  language: Language,
  system: UnitSystem = "si",
): string {
  const shown = shownAs(unit, system);
  const value = uncertainty * shown.factor;
  const usual = decimalsOf(shown.unit);
  const needed = value > 0 ? Math.ceil(-Math.log10(2 * value)) : 0;
  const decimals = Math.min(Math.max(usual, needed), usual + MOST_EXTRA_DIGITS);
  return formatQuantity(value, shown.unit, language, { decimals });
}

/**
 * A value and the limit it is held against, rounded alike.
 *
 * Where rounding would show both the same although they differ, both get as many digits more as it takes to tell them
 * apart: 75.4 mm against 75 mm is written "75.4 mm" and "75.0 mm", so that a reader sees why it failed. The verdict itself is made on unrounded numbers.
 *
 * @param value in the unit of the criterion; NaN is shown as a dash.
 * @param limit in the same unit.
 * @param unit of the criterion: "m" is shown in mm, "m/m" in mm/m, others as they are.
 */
export function formatAgainstLimit(
  value: number,
  limit: number,
  unit: string,
  language: Language,
  system: UnitSystem = "si",
): { readonly value: string; readonly limit: string } {
  const shown = shownAs(unit, system);
  const usual = decimalsOf(shown.unit);
  const write = (decimals: number) => ({
    value: formatQuantity(value * shown.factor, shown.unit, language, { decimals }),
    limit: formatQuantity(limit * shown.factor, shown.unit, language, { decimals }),
  });
  let written = write(usual);
  if (!Number.isFinite(value) || !Number.isFinite(limit) || value === limit) return written;
  for (let extra = 1; written.value === written.limit && extra <= MOST_EXTRA_DIGITS; extra++) {
    written = write(usual + extra);
  }
  return written;
}
