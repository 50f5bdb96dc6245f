import type { CriterionSource } from "#core";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./allowances-screen.module.css";

const STATUS = { read: "statusRead", quoted: "statusQuoted", memory: "statusMemory" } as const;

/** Where a limit comes from, and how that is known. */
export function SourceLine({ source }: { readonly source: CriterionSource | undefined }) {
  const word = useWords(allowancesWords);
  if (source === undefined) return <p className={styles["soft"]}>{word("ownSource")}</p>;
  const { document, edition, clause, status } = source;
  return (
    <p className={styles["source"]}>
      {[document, edition, clause].filter((part) => part !== undefined && part !== "").join(", ")}
      {status === undefined ? null : (
        <strong className={styles["status"]} data-status={status}>
          {word(STATUS[status])}
        </strong>
      )}
    </p>
  );
}
