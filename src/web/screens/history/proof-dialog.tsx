import type { ReactNode } from "react";
import { sentenceOf } from "#text";
import { useJob } from "../../app/job-frame.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { historyWords } from "../../words/history/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { EntryProof, TimelineRow } from "../../worker/desk-record.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import styles from "./history-screen.module.css";

/** What can be shown of one entry, in words; every step was worked out on this device. */
export function ProofDialog({
  row,
  onClose,
}: {
  readonly row: TimelineRow | undefined;
  readonly onClose: () => void;
}) {
  const word = useWords(historyWords);
  if (row === undefined) return null;
  const title = word("proofTitle", { sequence: row.sequence, device: row.deviceName });
  return (
    <Dialog title={title} isOpen onClose={onClose}>
      <Proof key={row.id} row={row} />
    </Dialog>
  );
}

function Proof({ row }: { readonly row: TimelineRow }) {
  const job = useJob();
  const word = useWords(historyWords);
  const time = useTime();
  const language = useLanguage();
  const proof = useAnswer((desk) => desk.record.proof(job.id, row.id), [job.id, row.id]);
  if (proof === undefined) return <p role="status">{word("proofAsking")}</p>;
  const { isSigned, trouble, office } = proof;
  return (
    <div className={styles["proof"]}>
      <p>
        {row.what}
        {row.about === "" ? "" : `: ${row.about}`}
      </p>
      <Step title={word("signedTitle")} isGood={isSigned}>
        {isSigned || trouble === undefined
          ? word("signedGood", { author: row.author })
          : sentenceOf(trouble, language)}
      </Step>
      <Step title={word("officeTitle")} isGood={office?.isProven}>
        <OfficeStep proof={proof} />
      </Step>
      <section>
        <h3>{word("notShownTitle")}</h3>
        <p>{word("notShown", { when: time(row.wall) })}</p>
      </section>
      <dl className={styles["keys"]}>
        <Key name={word("entryId")}>{row.id}</Key>
        <Key name={word("deviceKey")}>{row.device}</Key>
        {office === undefined || office.root === "" ? null : (
          <>
            <Key name={word("headRoot")}>{office.root}</Key>
            <Key name={word("officeKey")}>{office.key}</Key>
          </>
        )}
      </dl>
    </div>
  );
}

function OfficeStep({ proof: { isSigned, trouble, office } }: { readonly proof: EntryProof }) {
  const word = useWords(historyWords);
  const time = useTime();
  const language = useLanguage();
  if (office === undefined)
    return trouble === undefined || !isSigned
      ? "–"
      : word("officeNone", { why: sentenceOf(trouble, language) });
  if (office.trouble !== undefined) return sentenceOf(office.trouble, language);
  const { place, size, steps, at } = office;
  return (
    <>
      {word("officeGood", { place, size, steps })} {word("officeHead", { when: time(at) })}.
    </>
  );
}

/** undefined: it could not be looked at. */
function Step({
  title,
  isGood,
  children,
}: {
  readonly title: string;
  readonly isGood: boolean | undefined;
  readonly children: ReactNode;
}) {
  return (
    <section className={styles["step"]} data-good={isGood}>
      <h3>
        <span aria-hidden="true" className={styles["sign"]}>
          {isGood === undefined ? "–" : isGood ? "✓" : "✕"}
        </span>
        {title}
      </h3>
      <p>{children}</p>
    </section>
  );
}

const Key = ({ name, children }: { readonly name: string; readonly children: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>
      <code>{children}</code>
    </dd>
  </div>
);
