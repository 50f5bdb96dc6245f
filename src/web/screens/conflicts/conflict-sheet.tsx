import { useState } from "react";
import type { JsonValue } from "#records";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { Sheet } from "../../components/page.tsx";
import { conflictsWords } from "../../words/conflicts/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { ConflictCard, ConflictValue } from "../../worker/desk-record.ts";
import { useSaved } from "../review/use-saved.ts";
import styles from "./conflicts-screen.module.css";
import { EffectList } from "./effect-list.tsx";
import { letterOf } from "./letter-of.ts";
import { WriteNew } from "./write-new.tsx";

/** One field in conflict: its values side by side, what they mean, and the three ways to settle it. */
export function ConflictSheet({ card }: { readonly card: ConflictCard }) {
  const job = useJob();
  const word = useWords(conflictsWords);
  const saved = useSaved();
  const [isWriting, setWriting] = useState(false);
  const { thing, field, thingText, fieldText, values, before, edit } = card;
  const settle = (value: JsonValue, text: string) =>
    saved(
      desk().settle(job.id, thing, field, value),
      word("kept", { field: fieldText, thing: thingText, value: text }),
    );
  return (
    <Sheet title={word("conflict", { field: fieldText, thing: thingText })}>
      <ul className={styles["values"]}>
        {values.map((value, i) => (
          <Value key={value.by[0]?.entry} letter={letterOf(i)} value={value}>
            <Button onPress={() => void settle(value.value, value.text)}>
              {word("keep", { letter: letterOf(i) })}
            </Button>
          </Value>
        ))}
      </ul>
      <p className={styles["soft"]}>
        {before === undefined ? word("beforeNothing") : word("before", { value: before })}
      </p>
      <EffectList card={card} />
      {edit === undefined ? (
        <p className={styles["soft"]}>{word("onlyHere")}</p>
      ) : isWriting ? (
        <WriteNew
          edit={edit}
          label={word("newValue", { field: fieldText })}
          onCancel={() => setWriting(false)}
          onWrite={(value, text) => void settle(value, text)}
        />
      ) : (
        <div>
          <Button onPress={() => setWriting(true)}>{word("writeNew")}</Button>
        </div>
      )}
    </Sheet>
  );
}

function Value({
  letter,
  value: { text, by, isUsed },
  children,
}: {
  readonly letter: string;
  readonly value: ConflictValue;
  readonly children: React.ReactNode;
}) {
  const word = useWords(conflictsWords);
  const time = useTime();
  return (
    <li className={styles["value"]}>
      <h3>{word("value", { letter })}</h3>
      <strong className={styles["figure"]}>{text}</strong>
      {by.map(({ author, deviceName, wall, entry }) => (
        <span key={entry}>{word("by", { author, device: deviceName, when: time(wall) })}</span>
      ))}
      {isUsed ? <span className={styles["soft"]}>{word("used")}</span> : null}
      <div className={styles["keep"]}>{children}</div>
    </li>
  );
}
