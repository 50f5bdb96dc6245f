import { degreesFromRadians, elementKind, type Section } from "#core";
import { formatNumber, verdictWords } from "#text";
import type { Column } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";

/** A column that is words or numbers and nothing drawn. */
type DesignColumn = Omit<Column<ElementRow>, "draw">;

/** Columns of the schedule that come from it: for the table of the job and for lines that are proposed. */
export function useDesignColumns(): readonly DesignColumn[] {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const metres = (value: number | undefined, decimals: number) =>
    value === undefined || !Number.isFinite(value) ? "–" : formatNumber(value, decimals, language);
  const sectionText = (section: Section | undefined) => {
    if (section === undefined) return "–";
    return section.shape === "round"
      ? word("round", { diameter: metres(section.diameterM, 3) })
      : word("rectangle", { length: metres(section.lengthM, 3), width: metres(section.widthM, 3) });
  };
  return [
    { id: "element", title: word("element"), text: ({ id }) => id },
    { id: "kind", title: word("kind"), text: ({ kind }) => elementKind(kind)?.text[language].name ?? kind },
    {
      id: "section",
      title: word("section"),
      unit: "m",
      kind: "number",
      text: (row) => sectionText(row.section),
    },
    { id: "easting", title: word("easting"), unit: "m", kind: "number", text: (row) => metres(row.eastM, 3) },
    {
      id: "northing",
      title: word("northing"),
      unit: "m",
      kind: "number",
      text: (row) => metres(row.northM, 3),
    },
    { id: "head", title: word("head"), unit: "m", kind: "number", text: (row) => metres(row.headLevelM, 2) },
    {
      id: "cutoff",
      title: word("cutoff"),
      unit: "m",
      kind: "number",
      text: (row) => metres(row.cutoffLevelM, 2),
    },
    { id: "toe", title: word("toe"), unit: "m", kind: "number", text: (row) => metres(row.toeLevelM, 2) },
    {
      id: "rake",
      title: word("rake"),
      unit: "°",
      kind: "number",
      text: ({ rakeRad }) => metres(degreesFromRadians(rakeRad), 2),
    },
    { id: "group", title: word("group"), text: ({ group }) => group ?? "–" },
    {
      id: "sequence",
      title: word("sequence"),
      kind: "number",
      text: ({ sequence }) => String(sequence ?? "–"),
    },
    { id: "role", title: word("role"), text: ({ role }) => role ?? "–" },
  ];
}

/** Columns of the schedule of a job: what is to be built, and how it stands. */
export function useScheduleColumns(): readonly Column<ElementRow>[] {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const [element, ...design] = useDesignColumns();
  return [
    element!,
    {
      id: "verdict",
      title: word("verdict"),
      text: ({ verdict }) => (verdict === undefined ? word("waiting") : verdictWords[language][verdict]),
      draw: ({ verdict }) => (verdict === undefined ? word("waiting") : <VerdictBadge verdict={verdict} />),
    },
    ...design,
    { id: "runs", title: word("runs"), kind: "number", text: ({ runs }) => String(runs) },
  ];
}
