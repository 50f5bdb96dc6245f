import type { StepReport } from "#core";
import { formatQuantity } from "#text";
import { Button } from "../../components/button.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { pathWords } from "../../words/path/words.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { RunSteps, SwitchEffect } from "../../worker/desk-review.ts";
import styles from "./path-screen.module.css";
import { effectText, STEP_NAMES } from "./step-text.ts";

export interface StepTableProps {
  readonly steps: RunSteps["steps"];
  readonly switches: readonly SwitchEffect[];
  readonly without: ReadonlySet<string>;
  readonly onSwitch: (id: string) => void;
}

interface Row {
  readonly id: string;
  readonly step: StepReport | undefined;
  readonly effect: SwitchEffect | undefined;
}

/** The steps of a run in their order, each with what it did; those that may be switched with what would be without them. */
export function StepTable({ steps, switches, without, onSwitch }: StepTableProps) {
  const word = useWords(pathWords);
  const common = useWords(reviewWords);
  const language = useLanguage();
  const shown = new Set(steps.map(({ step }) => step));
  const rows: readonly Row[] = [
    ...steps.map((step, i) => ({
      id: `${step.step} ${i}`,
      step,
      effect: switches.find(({ id }) => id === step.step),
    })),
    // what works inside of another step has a line of its own, so that it can be switched
    ...switches
      .filter(({ id }) => !shown.has(id))
      .map((effect) => ({ id: effect.id, step: undefined, effect })),
  ];
  return (
    <div className={styles["scroll"]}>
      <table className={styles["steps"]}>
        <thead>
          <tr>
            <th scope="col">{word("step")}</th>
            <th scope="col">{word("what")}</th>
            <th scope="col" className={styles["number"]}>
              {word("moves")}
            </th>
            <th scope="col">{word("counts")}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, step, effect }) => {
            const name = common(STEP_NAMES[step?.step ?? effect?.id ?? ""] ?? "stepPath");
            const isOut = effect !== undefined && without.has(effect.id);
            return (
              <tr key={id} data-out={isOut || undefined}>
                <th scope="row">{name}</th>
                <td>{step === undefined ? "–" : effectText(step, word, language)}</td>
                <td className={styles["number"]}>
                  {effect === undefined
                    ? "–"
                    : formatQuantity(1000 * effect.movesM, "mm", language, { decimals: 1 })}
                </td>
                <td>
                  {effect === undefined ? (
                    word("always")
                  ) : (
                    <Button
                      weight="quiet"
                      isPressed={isOut}
                      label={`${name}: ${word(isOut ? "takeIn" : "leaveOut")}`}
                      onPress={() => onSwitch(effect.id)}
                    >
                      {word(isOut ? "takeIn" : "leaveOut")}
                    </Button>
                  )}
                  {isOut ? <span className={styles["out"]}>{word("leftOut")}</span> : null}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
