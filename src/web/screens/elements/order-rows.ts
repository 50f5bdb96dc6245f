import type { Language } from "#core";
import type { Sorted } from "../../components/table.tsx";
import type { ElementRow } from "../../worker/desk.ts";
import { naturalOrder } from "./natural-order.ts";

type Value = string | number | undefined;

const VALUES: Readonly<Record<string, (row: ElementRow) => Value>> = {
  element: ({ id }) => id,
  kind: ({ kind }) => kind,
  section: ({ section }) => (section?.shape === "round" ? section.diameterM : section?.lengthM),
  easting: ({ eastM }) => eastM,
  northing: ({ northM }) => northM,
  head: ({ headLevelM }) => headLevelM,
  cutoff: ({ cutoffLevelM }) => cutoffLevelM,
  toe: ({ toeLevelM }) => toeLevelM,
  rake: ({ rakeRad }) => rakeRad,
  group: ({ group }) => group,
  sequence: ({ sequence }) => sequence,
  role: ({ role }) => role,
  runs: ({ runs }) => runs,
  verdict: ({ verdict }) => verdict,
};

/** Rows in the order of a column; along walls for "group": by their sequence within each. What is not known stands last. */
export function orderRows(
  rows: readonly ElementRow[],
  { id, isDown }: Sorted,
  language: Language,
): readonly ElementRow[] {
  const value = VALUES[id] ?? VALUES["element"]!;
  const sign = isDown ? -1 : 1;
  const along = (a: ElementRow, b: ElementRow) =>
    id === "group" ? sign * compare(a.sequence, b.sequence, language, sign) : 0;
  return rows.toSorted(
    (a, b) =>
      sign * compare(value(a), value(b), language, sign) || along(a, b) || naturalOrder(a.id, b.id, language),
  );
}

function compare(a: Value, b: Value, language: Language, sign: number): number {
  if (a === undefined || b === undefined) {
    if (a === b) return 0;
    return (a === undefined ? 1 : -1) * sign;
  }
  return typeof a === "number" && typeof b === "number"
    ? a - b
    : naturalOrder(String(a), String(b), language);
}

/** Rows that have every word of what was typed, in name, kind, group or role. */
export function filterRows(rows: readonly ElementRow[], typed: string): readonly ElementRow[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return rows;
  return rows.filter(({ id, kind, group = "", role = "" }) => {
    const all = `${id} ${kind} ${group} ${role}`.toLowerCase();
    return words.every((word) => all.includes(word));
  });
}
