import { formatLevel, formatQuantity, verdictWords } from "#text";
import { type Column, Table } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { togetherWords } from "../../words/together/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { RunCourse, RunDifference } from "../../worker/desk-review.ts";

/** The runs of a hole, whether each counts, and what it alone would say. */
export function CourseTable({ courses }: { readonly courses: readonly RunCourse[] }) {
  const word = useWords(togetherWords);
  const language = useLanguage();
  const time = useTime();
  const used = ({ isLeftOut, judgeable }: RunCourse) =>
    word(isLeftOut ? "outText" : judgeable ? "yes" : "notSound");
  const columns: readonly Column<RunCourse>[] = [
    { id: "run", title: word("run"), text: ({ run }) => run },
    { id: "used", title: word("used"), text: used },
    {
      id: "alone",
      title: word("alone"),
      text: ({ alone }) => (alone === undefined ? "–" : verdictWords[language][alone]),
      draw: ({ alone }) => (alone === undefined ? "–" : <VerdictBadge verdict={alone} />),
    },
    {
      id: "started",
      title: word("started"),
      text: ({ startedAt }) => (startedAt === undefined ? "–" : time(startedAt)),
    },
    { id: "operator", title: word("operator"), text: ({ operator }) => operator ?? "–" },
  ];
  return <Table label={word("runs")} columns={columns} rows={courses} idOf={({ run }) => run} />;
}

/** How each pair of runs agrees, in numbers. */
export function AgreementTable({ differences }: { readonly differences: readonly RunDifference[] }) {
  const word = useWords(togetherWords);
  const language = useLanguage();
  const length = (id: string, title: string, of: (row: RunDifference) => number): Column<RunDifference> => ({
    id,
    title,
    unit: "mm",
    kind: "number",
    text: (row) => formatQuantity(1000 * of(row), "1", language, { decimals: 1 }),
  });
  const agree = ({ agree: isSo, expectedM }: RunDifference) =>
    word(Number.isNaN(expectedM) ? "agreeUnknown" : isSo ? "agreeYes" : "agreeNo");
  const columns: readonly Column<RunDifference>[] = [
    { id: "pair", title: word("pair"), text: ({ first, second }) => word("pairText", { first, second }) },
    { id: "agree", title: word("agree"), text: agree },
    { id: "stations", title: word("stations"), kind: "number", text: ({ stations }) => String(stations) },
    length("meanAlong", word("meanAlong"), ({ meanAlongM }) => meanAlongM),
    length("meanAcross", word("meanAcross"), ({ meanAcrossM }) => meanAcrossM),
    length("scatter", word("scatter"), ({ scatterM }) => scatterM),
    length("largest", word("largest"), ({ largestM }) => largestM),
    {
      id: "level",
      title: word("atLevel"),
      kind: "number",
      text: ({ largestLevelM }) => formatLevel(largestLevelM, language),
    },
    length("expected", word("expected"), ({ expectedM }) => expectedM),
  ];
  return (
    <Table
      label={word("agreement")}
      columns={columns}
      rows={differences}
      idOf={({ first, second }) => `${first} ${second}`}
    />
  );
}

interface DifferenceRow {
  readonly levelM: number;
  readonly alongM: number;
  readonly acrossM: number;
}

/** A difference station by station. */
export function DifferenceTable({ difference }: { readonly difference: RunDifference }) {
  const word = useWords(togetherWords);
  const language = useLanguage();
  const rows = difference.levelM.map(
    (levelM, i): DifferenceRow => ({
      levelM,
      alongM: difference.alongM[i] ?? Number.NaN,
      acrossM: difference.acrossM[i] ?? Number.NaN,
    }),
  );
  const length = (id: "alongM" | "acrossM", title: string): Column<DifferenceRow> => ({
    id,
    title,
    unit: "mm",
    kind: "number",
    text: (row) => formatQuantity(1000 * row[id], "1", language, { decimals: 1 }),
  });
  const columns: readonly Column<DifferenceRow>[] = [
    {
      id: "level",
      title: word("level"),
      kind: "number",
      text: ({ levelM }) => formatLevel(levelM, language),
    },
    length("alongM", word("along")),
    length("acrossM", word("across")),
  ];
  return <Table label={word("table")} columns={columns} rows={rows} idOf={({ levelM }) => String(levelM)} />;
}
