import { type FormEvent, useState } from "react";
import { type SignInOutcome, signIn } from "../../app/session.ts";
import { Button } from "../../components/button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { signInWords } from "../../words/sign-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./sign-in.module.css";

const TROUBLE = { wrong: "wrong", "slow-down": "slowDown", "no-answer": "noAnswer" } as const;

/** Asks who is here, where the office has accounts. */
export function SignIn() {
  const word = useWords(signInWords);
  const [login, setLogin] = useState("");
  const [password, setPassword] = useState("");
  const [outcome, setOutcome] = useState<SignInOutcome>();
  const [isBusy, setBusy] = useState(false);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    setOutcome(await signIn(login, password));
    setBusy(false);
  };
  return (
    <main className={styles["page"]} id="main">
      <form className={styles["form"]} onSubmit={(event) => void send(event)}>
        <h1>{word("title")}</h1>
        <p>{word("lead")}</p>
        <TextField
          label={word("login")}
          value={login}
          onChange={setLogin}
          autoComplete="username"
          autoFocus
        />
        <TextField
          label={word("password")}
          value={password}
          onChange={setPassword}
          type="password"
          autoComplete="current-password"
          trouble={outcome === undefined || outcome === "signed-in" ? undefined : word(TROUBLE[outcome])}
        />
        <div>
          <Button weight="main" type="submit" isPending={isBusy}>
            {word("send")}
          </Button>
        </div>
      </form>
    </main>
  );
}
