import { type Cell, isEmptyCell, type TableRow } from "../table/table.ts";
import { bareUnit } from "./find-table.ts";
import { loggerNumber, type NumberForm, unitBehind } from "./logger-numbers.ts";
import { loggerTime } from "./logger-times.ts";
import { QUANTITY_OF, type Role, roleNamed } from "./roles.ts";
import { type DateOrder, type GivenSettings, type Guess, givenOr, guess } from "./settings.ts";
import { UNITS_OF, type UnitId, unitNamed, unitsNamed } from "./units.ts";

/** A column of the file with what it was taken for, and why. */
export interface GuessedColumn {
  readonly heading: string;
  /** the unit as the file writes it; "" where it writes none */
  readonly writtenUnit: string;
  readonly role: Guess<Role>;
  readonly unit: Guess<UnitId>;
}

/** Headings of row counters and remarks: nothing of them goes into a run. */
const NOTHING =
  /^(no|nr|num|number|index|idx|#|id|row|record|rec|lfd|lfd nr|zeile|remark|remarks|bemerkung|comment|kommentar|status|flag|battery|batterie|batt|voltage|spannung)\.?$/i;

/** What each column is for, from its heading, its unit and its values; columns that were given keep what was given. */
export function guessColumns(
  headings: readonly Cell[],
  units: readonly Cell[],
  rows: readonly TableRow[],
  form: NumberForm & { readonly dateOrder: DateOrder },
  given: GivenSettings["columns"] = {},
): readonly GuessedColumn[] {
  const width = Math.max(headings.length, ...rows.slice(0, 2000).map(({ cells }) => cells.length), 0);
  const sample = rows.slice(0, 2000);
  const named = Array.from({ length: width }, (_, index) => {
    const { heading, unit } = splitHeading(headings[index]);
    const behind = sample.map(({ cells }) => unitBehind(cells[index])).find((word) => word !== undefined);
    const writtenUnit = bareUnit(units[index]) || unit || behind || "";
    return { heading: heading || `column ${index + 1}`, isNamed: heading !== "", writtenUnit };
  });
  const taken = new Set<Role>();
  for (const each of Object.values(given))
    if (each.role !== undefined && each.role !== "none") taken.add(each.role);
  const roles = named.map(({ heading, isNamed, writtenUnit }, index) =>
    givenOr(
      given[index]?.role,
      () =>
        once(isNamed ? roleOfWords(heading, writtenUnit) : undefined, taken) ??
        guess<Role>("none", "likely", "logger.why-role-unknown", { found: heading }),
    ),
  );
  roleByValues(roles, sample, form, taken, given);
  return named.map(({ heading, writtenUnit }, index) => ({
    heading,
    writtenUnit,
    role: roles[index]!,
    unit: givenOr(given[index]?.unit, () => unitOf(roles[index]!.value, writtenUnit)),
  }));
}

/** Heading and unit: "Depth [m]", "Depth (cm)", "depth, m", "depth_m", "Depth m". */
export function splitHeading(cell: Cell): { readonly heading: string; readonly unit: string } {
  const text = String(cell ?? "")
    .replaceAll(/\s+/g, " ")
    .trim();
  const bracketed = /^(.*?)\s*[[({<]([^\])}>]*)[\])}>]\s*$/.exec(text);
  if (bracketed !== null && bracketed[1] !== "" && unitsNamed(bracketed[2]!).length > 0)
    return { heading: bracketed[1]!, unit: bracketed[2]!.trim() };
  const suffixed = /^(.+?)(?:\s*,\s*|_|\s+in\s+|\s+)([^\s,_]+)$/i.exec(text);
  if (suffixed !== null && unitsNamed(suffixed[2]!).length > 0)
    return { heading: suffixed[1]!, unit: suffixed[2]! };
  return { heading: text, unit: "" };
}

function roleOfWords(heading: string, writtenUnit: string): Guess<Role> | undefined {
  if (NOTHING.test(heading.trim()))
    return guess("none", "certain", "logger.why-role-word", { found: heading });
  const named = roleNamed(heading, unitsNamed(writtenUnit));
  if (named === undefined) return undefined;
  return guess(named.role, named.sure, "logger.why-role-word", { found: heading });
}

/** Each role goes to the first column that has it. */
function once(role: Guess<Role> | undefined, taken: Set<Role>): Guess<Role> | undefined {
  if (role === undefined || role.value === "none") return role;
  if (taken.has(role.value)) return guess("none", "open", "logger.why-role-taken", { found: role.value });
  taken.add(role.value);
  return role;
}

/** Columns whose heading says nothing: times, and depths that go on step by step. */
function roleByValues(
  roles: Guess<Role>[],
  rows: readonly TableRow[],
  form: NumberForm & { readonly dateOrder: DateOrder },
  taken: Set<Role>,
  given: NonNullable<GivenSettings["columns"]>,
): void {
  for (const [index, role] of roles.entries()) {
    if (role.value !== "none" || role.sure === "certain" || given[index]?.role !== undefined) continue;
    const cells = rows.map((row) => row.cells[index]).filter((cell) => !isEmptyCell(cell));
    const times = cells.map((cell) => loggerTime(cell, form.dateOrder));
    if (cells.length > 0 && times.every((time) => time !== undefined)) {
      const wanted: Role = times.every((time) => time?.clock === undefined) ? "date" : "time";
      if (taken.has(wanted)) continue;
      taken.add(wanted);
      roles[index] = guess(wanted, "likely", "logger.why-role-times");
    } else if (!taken.has("depth") && !taken.has("count") && goesOn(cells, form)) {
      taken.add("depth");
      roles[index] = guess("depth", "open", "logger.why-role-depths");
    }
  }
}

/** Numbers that never fall and mostly grow, and are more than a count of the rows. */
function goesOn(cells: readonly Cell[], form: NumberForm): boolean {
  const numbers = cells.map((cell) => loggerNumber(cell, form));
  if (numbers.length < 3 || numbers.some((number) => number === undefined)) return false;
  const steps = numbers.slice(1).map((number, i) => number! - numbers[i]!);
  const isCounter = steps.every((step) => step === 1);
  return (
    !isCounter &&
    steps.every((step) => step >= 0) &&
    steps.filter((step) => step > 0).length > steps.length / 2
  );
}

function unitOf(role: Role, written: string): Guess<UnitId> {
  const quantity = QUANTITY_OF[role];
  const usual = UNITS_OF[quantity][0]!;
  if (quantity === "plain") return guess(usual, "certain", "logger.why-no-unit");
  const known = unitNamed(written, quantity);
  if (known !== undefined) return guess(known, "certain", "logger.why-unit-written", { found: written });
  if (quantity === "acceleration") return guess(usual, "likely", "logger.why-unit-any");
  return guess(usual, "open", "logger.why-unit-usual", { found: usual });
}
