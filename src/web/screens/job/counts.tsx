import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { VERDICTS, type Verdict } from "#core";
import { verdictWords } from "#text";
import { VerdictShape } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { jobWords } from "../../words/job/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import styles from "./job-screen.module.css";

export interface CountsProps {
  readonly job: JobView;
  /** verdicts that are shown; empty: all */
  readonly only: ReadonlySet<Verdict>;
  readonly onOnly: (verdicts: ReadonlySet<Verdict>) => void;
}

/** How many elements have which verdict; pressing one shows only these on the plan and in the list. */
export function Counts({ job, only, onOnly }: CountsProps) {
  const language = useLanguage();
  const word = useWords(jobWords);
  return (
    <ToggleButtonGroup
      className={styles["counts"]!}
      aria-label={word("countsTitle")}
      selectionMode="multiple"
      selectedKeys={only}
      onSelectionChange={(keys) => onOnly(new Set(VERDICTS.filter((verdict) => keys.has(verdict))))}
    >
      {VERDICTS.map((verdict) => (
        <ToggleButton key={verdict} id={verdict} className={styles["count"]!}>
          <VerdictShape verdict={verdict} />
          <span className={styles["number"]}>{job.counts[verdict]}</span>
          <span className={styles["word"]}>{verdictWords[language][verdict]}</span>
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
