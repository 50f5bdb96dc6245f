import { type FormEvent, useState } from "react";
import { sentenceOf } from "#text";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { jobsWords } from "../../words/jobs/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";

export interface NewJobProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onMade: (job: string) => void;
}

/** Asks for a name and starts a job with it. */
export function NewJob({ isOpen, onClose, onMade }: NewJobProps) {
  const word = useWords(jobsWords);
  const language = useLanguage();
  const [name, setName] = useState("");
  const [trouble, setTrouble] = useState<string>();
  const make = async (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === "") return setTrouble(word("newMissing"));
    const made = await desk().createJob(name.trim());
    if (made.ok) onMade(made.value);
    else
      setTrouble(
        word("createFailed", { why: made.error.map((issue) => sentenceOf(issue, language)).join(" ") }),
      );
  };
  return (
    <Dialog title={word("newTitle")} isOpen={isOpen} onClose={onClose}>
      <form onSubmit={(event) => void make(event)}>
        <TextField
          label={word("newName")}
          hint={word("newHint")}
          value={name}
          onChange={setName}
          trouble={trouble}
          autoFocus
        />
        <p>
          <Button weight="main" type="submit">
            {word("create")}
          </Button>
        </p>
      </form>
    </Dialog>
  );
}
