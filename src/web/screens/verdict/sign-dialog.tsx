import { type KeyboardEvent, useState } from "react";
import { useJob } from "../../app/job-frame.tsx";
import { useSession } from "../../app/session.ts";
import { Button } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { Notice } from "../../components/message.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useWords } from "../../words/use-words.ts";
import { verdictWords } from "../../words/verdict/words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { VerdictView } from "../../worker/desk-review.ts";
import shared from "../review/review.module.css";
import { useSaved } from "../review/use-saved.ts";
import { MEANINGS, type Meaning, meaningWord } from "./meanings.ts";

export interface SignDialogProps {
  readonly view: VerdictView;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

/** Asks for a name and a meaning, then signs. Signing cannot be undone, so it is typed, and Enter never does it. */
export function SignDialog({ view, isOpen, onClose }: SignDialogProps) {
  const job = useJob();
  const word = useWords(verdictWords);
  const session = useSession();
  const saved = useSaved();
  const [meaning, setMeaning] = useState<Meaning>("checked by");
  const [typed, setTyped] = useState("");
  const [trouble, setTrouble] = useState<string>();
  const [isSigning, setSigning] = useState(false);
  const name = session.state === "here" ? session.author.name : "–";
  const element = view.row.id;
  const missing = missingFirst(view);
  const sign = async () => {
    if (typed.trim() !== name) return setTrouble(word("signNameOther", { name }));
    setSigning(true);
    const done = await saved(desk().review.sign(job.id, element, meaning), word("signDone", { element }));
    setSigning(false);
    if (!done) return;
    setTyped("");
    onClose();
  };
  return (
    <Dialog title={word("signTitle", { element })} isOpen={isOpen} onClose={onClose}>
      {missing === undefined ? (
        <div className={shared["form"]} onKeyDownCapture={withoutEnter}>
          <p>{word("signText", { element })}</p>
          {view.takenBy.includes(name) ? <Notice>{word("signOwn")}</Notice> : null}
          <p>
            <strong>{word("signAs", { name })}</strong>
          </p>
          <ChoiceBar
            label={word("signMeaning")}
            value={meaning}
            choices={MEANINGS.map((id) => ({ id, text: word(meaningWord[id]) }))}
            onChange={setMeaning}
          />
          <TextField
            label={word("signName")}
            value={typed}
            onChange={(text) => {
              setTyped(text);
              setTrouble(undefined);
            }}
            trouble={trouble}
            autoComplete="off"
          />
          <div className={shared["line"]}>
            <Button weight="main" isPending={isSigning} onPress={() => void sign()}>
              {word("sign")}
            </Button>
            <span className={shared["soft"]}>{word("signSpace")}</span>
          </div>
        </div>
      ) : (
        <p>{word(missing)}</p>
      )}
    </Dialog>
  );
}

/** What has to be done before anybody can sign. */
function missingFirst({
  row,
  recorded,
}: VerdictView): "signConflict" | "signRecordFirst" | "signOldFirst" | undefined {
  if (row.inConflict) return "signConflict";
  if (recorded === undefined) return "signRecordFirst";
  return recorded.isCurrent ? undefined : "signOldFirst";
}

function withoutEnter(event: KeyboardEvent): void {
  if (event.key !== "Enter") return;
  event.preventDefault();
  event.stopPropagation();
}
