import { type FormEvent, useState } from "react";
import { type SignInOutcome, showCode, signOut } from "../../app/session.ts";
import { Button } from "../../components/button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { signInWords } from "../../words/sign-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./sign-in.module.css";

const TROUBLE = { wrong: "codeWrong", "slow-down": "slowDown", "no-answer": "noAnswer" } as const;

/** Asks for the code of the second factor, after the password was right. */
export function ShowCode() {
  const word = useWords(signInWords);
  const [code, setCode] = useState("");
  const [outcome, setOutcome] = useState<SignInOutcome>();
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setOutcome(await showCode(code));
  };
  return (
    <main className={styles["page"]} id="main">
      <form className={styles["form"]} onSubmit={(event) => void send(event)}>
        <h1>{word("codeTitle")}</h1>
        <TextField
          label={word("code")}
          hint={word("codeHint")}
          value={code}
          onChange={setCode}
          autoComplete="one-time-code"
          autoFocus
          trouble={outcome === undefined || outcome === "signed-in" ? undefined : word(TROUBLE[outcome])}
        />
        <div className={styles["actions"]}>
          <Button weight="main" type="submit">
            {word("send")}
          </Button>
          <Button onPress={() => void signOut()}>{word("back")}</Button>
        </div>
      </form>
    </main>
  );
}
