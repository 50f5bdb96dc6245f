import { Label, ProgressBar } from "react-aria-components";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import { Button } from "./button.tsx";
import styles from "./progress.module.css";

export interface ProgressProps {
  /** what is being done */
  readonly label: string;
  readonly done: number;
  /** 0: not known yet */
  readonly total: number;
  readonly onCancel?: () => void;
}

/** How far long work is, with the numbers written out, and a way to stop it. */
export function Progress({ label, done, total, onCancel }: ProgressProps) {
  const word = useWords(componentWords);
  const isCounted = total > 0;
  return (
    <div className={styles["row"]}>
      <ProgressBar
        className={styles["progress"]!}
        isIndeterminate={!isCounted}
        value={isCounted ? (100 * done) / total : 0}
        valueLabel={isCounted ? word("progressOf", { done, total }) : ""}
      >
        {({ percentage, valueText }) => (
          <>
            <div className={styles["words"]}>
              <Label>{label}</Label>
              <span>{valueText}</span>
            </div>
            <div className={styles["track"]}>
              <div className={styles["fill"]} style={{ width: `${percentage ?? 30}%` }} />
            </div>
          </>
        )}
      </ProgressBar>
      {onCancel === undefined ? null : (
        <Button weight="quiet" onPress={onCancel}>
          {word("stop")}
        </Button>
      )}
    </div>
  );
}
