import { Button } from "../../components/button.tsx";
import { Sheet } from "../../components/page.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import styles from "./elements-screen.module.css";
import { naturalOrder } from "./natural-order.ts";

/** Elements that were withdrawn, each with its way back. */
export function Withdrawn({ job }: { readonly job: JobView }) {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const things = useAnswer((asked) => asked.things(job.id, "element/"), [job.id, job.revision]) ?? {};
  const names = Object.entries(things)
    .filter(([, { fields }]) => fields["withdrawn"]?.at(-1)?.value === true)
    .map(([key]) => decodeURIComponent(key.slice("element/".length)))
    .toSorted((a, b) => naturalOrder(a, b, language));
  if (names.length === 0) return null;
  const putBack = (element: string) => {
    const say = (withdrawn: boolean) => [{ kind: "element", body: { element, set: { withdrawn } } }];
    void writeWithUndo(job.id, say(false), say(true), word("wasPutBack", { element }));
  };
  return (
    <Sheet title={word("withdrawnTitle")}>
      <p>{word("withdrawnText")}</p>
      <ul className={styles["withdrawn"]}>
        {names.map((element) => (
          <li key={element}>
            <Button onPress={() => putBack(element)}>{word("putBack", { element })}</Button>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
