import { formatLevel, formatOffset, formatQuantity } from "#text";
import { DepthPlot } from "../../components/depth-plot.tsx";
import { type Column, Table } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { pathWords } from "../../words/path/words.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { Trial, TrialRow } from "../../worker/desk-review.ts";
import styles from "./path-screen.module.css";

/** What the other way of working it out would give, beside what the job says. */
export function TrialResult({ trial }: { readonly trial: Trial }) {
  const word = useWords(pathWords);
  const common = useWords(reviewWords);
  const language = useLanguage();
  if (trial.rows.length === 0) return <p role="alert">{word("trialNone")}</p>;
  const panel = (id: "alongM" | "acrossM", title: string) => ({
    id,
    title,
    unit: "mm",
    series: (["now", "trial"] as const).map((which) => ({
      id: which,
      name: word(which === "now" ? "asTheJob" : "inTheTrial"),
      points: trial.rows.map((row) => ({ depth: row.levelM, value: 1000 * row[which][id] })),
    })),
  });
  return (
    <div className={styles["trial"]} role="status">
      <dl className={styles["verdicts"]}>
        <div>
          <dt>{word("verdictNow")}</dt>
          <dd>
            <VerdictBadge verdict={trial.verdictNow} />
          </dd>
        </div>
        <div>
          <dt>{word("trialVerdict")}</dt>
          <dd>
            <VerdictBadge verdict={trial.verdict} />
          </dd>
        </div>
      </dl>
      <p>
        <strong>{word(trial.verdict === trial.verdictNow ? "trialSame" : "trialChanges")}</strong>{" "}
        {word("trialLargest", {
          moved: formatQuantity(1000 * trial.largestM, "mm", language, { decimals: 1 }),
          level: formatLevel(trial.largestLevelM, language),
        })}{" "}
        {word("trialLowest", {
          trial: formatOffset(trial.lowest.trialM, language),
          now: formatOffset(trial.lowest.nowM, language),
        })}
      </p>
      <DepthPlot
        label={word("plotLabel")}
        panels={[panel("alongM", word("along")), panel("acrossM", word("across"))]}
        depthTitle={common("levelAxis")}
        depthUnit="m"
        isLevel
      />
      <details>
        <summary>{word("plotTable")}</summary>
        <TrialTable rows={trial.rows} />
      </details>
    </div>
  );
}

function TrialTable({ rows }: { readonly rows: readonly TrialRow[] }) {
  const word = useWords(pathWords);
  const language = useLanguage();
  const offset = (id: string, title: string, of: (row: TrialRow) => number): Column<TrialRow> => ({
    id,
    title,
    unit: "mm",
    kind: "number",
    text: (row) => formatQuantity(1000 * of(row), "1", language, { decimals: 1 }),
  });
  const columns: readonly Column<TrialRow>[] = [
    {
      id: "level",
      title: word("level"),
      kind: "number",
      text: ({ levelM }) => formatLevel(levelM, language),
    },
    offset("alongNow", word("alongNow"), ({ now }) => now.alongM),
    offset("alongTrial", word("alongTrial"), ({ trial }) => trial.alongM),
    offset("acrossNow", word("acrossNow"), ({ now }) => now.acrossM),
    offset("acrossTrial", word("acrossTrial"), ({ trial }) => trial.acrossM),
  ];
  return (
    <Table label={word("plotTable")} columns={columns} rows={rows} idOf={({ levelM }) => String(levelM)} />
  );
}
