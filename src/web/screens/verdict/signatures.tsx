import { useState } from "react";
import { sentenceOf } from "#text";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import { verdictWords } from "../../words/verdict/words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { LogCheck, SealView } from "../../worker/desk-review.ts";
import shared from "../review/review.module.css";
import { MEANINGS, meaningWord } from "./meanings.ts";
import styles from "./verdict-screen.module.css";

/** As much of a key as people compare by eye. */
const SHOWN_OF_KEY = 16;

/** Who has signed, what it meant, and what checking the signature found. */
export function Signatures({ seals }: { readonly seals: readonly SealView[] }) {
  const job = useJob();
  const word = useWords(verdictWords);
  const [check, setCheck] = useState<LogCheck>();
  const [isChecking, setChecking] = useState(false);
  const run = async () => {
    setChecking(true);
    setCheck(await desk().review.checkLog(job.id));
    setChecking(false);
  };
  return (
    <>
      {seals.length === 0 ? (
        <p className={shared["soft"]}>{word("signaturesNone")}</p>
      ) : (
        <ul className={styles["seals"]}>
          {seals.map((seal) => (
            <Signature key={`${seal.key} ${seal.at} ${seal.meaning}`} seal={seal} />
          ))}
        </ul>
      )}
      <div>
        <Button isPending={isChecking} onPress={() => void run()}>
          {word("check")}
        </Button>
      </div>
      {check === undefined ? null : <Checked check={check} />}
    </>
  );
}

function Signature({ seal }: { readonly seal: SealView }) {
  const word = useWords(verdictWords);
  const language = useLanguage();
  const time = useTime();
  const known = MEANINGS.find((each) => each === seal.meaning);
  const meaning = known === undefined ? seal.meaning : word(meaningWord[known]);
  const outcome =
    seal.trouble === undefined
      ? word(seal.isCurrent ? "sealSound" : "sealOld")
      : sentenceOf(seal.trouble, language);
  return (
    <li data-trouble={seal.trouble === undefined ? undefined : true}>
      <strong>{word("seal", { meaning, name: seal.name, when: time(seal.at) })}</strong>
      <span>{outcome}</span>
      <small>{word("sealKey", { key: seal.key.slice(0, SHOWN_OF_KEY) })}</small>
    </li>
  );
}

function Checked({ check: { entries, devices, firstBad } }: { readonly check: LogCheck }) {
  const word = useWords(verdictWords);
  const language = useLanguage();
  if (firstBad.length === 0) return <p role="status">{word("checkGood", { entries, devices })}</p>;
  return (
    <ul role="alert">
      {firstBad.map(({ device, sequence, issue }) => (
        <li key={device}>
          {word("checkBad", {
            device: device.slice(0, SHOWN_OF_KEY),
            sequence,
            why: sentenceOf(issue, language),
          })}
        </li>
      ))}
    </ul>
  );
}
