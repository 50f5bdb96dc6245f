import { criterion, elementKind, type Language, VERDICTS, type Verdict } from "#core";
import { verdictWords } from "#text";
import { Button } from "../../components/button.tsx";
import { VerdictShape } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import { desk } from "../../worker/desk-client.ts";
import type { RuleView } from "../../worker/desk-set-up.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { AllowanceDrawing } from "./allowance-drawing.tsx";
import styles from "./allowances-screen.module.css";
import { SourceLine } from "./source-line.tsx";

/** One rule: its sentence, what it allows, for how many elements, what came of it, and where it is from. */
export function RuleCard({
  job,
  rule,
  onChange,
}: {
  readonly job: JobView;
  readonly rule: RuleView;
  readonly onChange: () => void;
}) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const title = criterion(rule.kind)?.text[language].title ?? rule.kind;
  const limited = Object.entries(rule.appliesTo)
    .flatMap(([key, asked]) => [asked].flat().map((each) => nameOf(key, each, language)))
    .join(", ");
  const say = (withdrawn: boolean) => [
    { kind: "criterion", body: { criterion: rule.id, set: { withdrawn } } },
  ];
  const withdraw = async () => {
    await writeWithUndo(job.id, say(true), say(false), word("withdrawn"));
  };
  const writeOut = async (ofSet: number) => {
    await writeWithUndo(job.id, await desk().takeSetApart(job.id, ofSet), [], word("wroteOut"));
  };
  return (
    <article className={styles["rule"]} aria-label={`${title}: ${rule.sentence}`}>
      <div className={styles["said"]}>
        <h2>{title}</h2>
        <p className={styles["sentence"]}>{rule.sentence}</p>
        <p>
          {word("applies", { count: rule.applies })}
          {limited === "" ? null : ` ${word("limited", { list: limited })}`}
        </p>
        <SourceLine source={rule.source} />
        <Counts counts={rule.counts} />
        {rule.ofSet === undefined ? null : <p className={styles["soft"]}>{word("ofSet")}</p>}
        <div className={styles["buttons"]}>
          {rule.ofSet === undefined ? (
            <>
              <Button label={`${word("change")}: ${rule.sentence}`} onPress={onChange}>
                {word("change")}
              </Button>
              <Button label={`${word("withdraw")}: ${rule.sentence}`} onPress={() => void withdraw()}>
                {word("withdraw")}
              </Button>
            </>
          ) : (
            <Button
              label={`${word("writeOut")}: ${rule.sentence}`}
              onPress={() => void writeOut(rule.ofSet!)}
            >
              {word("writeOut")}
            </Button>
          )}
        </div>
      </div>
      <AllowanceDrawing picture={rule.picture} />
    </article>
  );
}

const nameOf = (key: string, asked: string, language: Language): string =>
  key === "kind" ? (elementKind(asked)?.text[language].plural ?? asked) : asked;

/** How many elements have which verdict by it. */
export function Counts({ counts }: { readonly counts: Readonly<Record<Verdict, number>> }) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const found = VERDICTS.filter((verdict) => counts[verdict] > 0);
  if (found.length === 0) return null;
  return (
    <ul className={styles["counts"]} aria-label={word("counts")}>
      {found.map((verdict) => (
        <li key={verdict}>
          <VerdictShape verdict={verdict} /> {counts[verdict]} {verdictWords[language][verdict]}
        </li>
      ))}
    </ul>
  );
}
