import type { ReactNode } from "react";
import { VERDICTS } from "#core";
import { formatNumber } from "#text";
import { signOut, useSession } from "../../app/session.ts";
import { Button } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { changePreferences, THEMES } from "../../preferences/preferences.ts";
import { usePreferences } from "../../preferences/use-preferences.ts";
import { settingsWords } from "../../words/settings/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useDeviceStatus } from "../../worker/use-device-status.ts";
import styles from "./settings-screen.module.css";

const BYTES_PER_MB = 1_000_000;

/** How this device shows things, and what it is in the log. */
export function Component() {
  const word = useWords(settingsWords);
  const { language, theme } = usePreferences();
  return (
    <Page title={word("title")} lead={word("lead")}>
      <Sheet title={word("shown")}>
        <ChoiceBar
          label={word("language")}
          value={language}
          choices={[
            { id: "en", text: word("english") },
            { id: "de", text: word("german") },
          ]}
          onChange={(chosen) => changePreferences({ language: chosen })}
        />
        <ChoiceBar
          label={word("theme")}
          value={theme}
          choices={THEMES.map((id) => ({ id, text: word(id) }))}
          onChange={(chosen) => changePreferences({ theme: chosen })}
        />
        <div className={styles["sample"]}>
          <p>{word("sample")}</p>
          <ul>
            {VERDICTS.map((verdict) => (
              <li key={verdict}>
                <VerdictBadge verdict={verdict} />
              </li>
            ))}
          </ul>
        </div>
      </Sheet>
      <DeviceSheet />
    </Page>
  );
}

function DeviceSheet() {
  const word = useWords(settingsWords);
  const { language } = usePreferences();
  const status = useDeviceStatus();
  const session = useSession();
  if (status === undefined) return null;
  return (
    <Sheet title={word("device")}>
      <dl className={styles["facts"]}>
        <Fact name={word("person")}>
          {session.state !== "here"
            ? "–"
            : session.isConfirmed
              ? session.author.name
              : word("unconfirmed", { name: session.author.name })}
          {session.state === "here" && session.mode === "shared" && session.isConfirmed ? (
            <Button onPress={() => void signOut()}>{word("signOut")}</Button>
          ) : null}
        </Fact>
        <Fact name={word("deviceName")}>
          {status.device === undefined ? word("noDevice") : <code>{status.device}</code>}
        </Fact>
        <Fact name={word("writer")}>{word(status.writer === "here" ? "writerHere" : "writerElsewhere")}</Fact>
        <Fact name={word("kept")}>{word(status.isPersisted ? "keptYes" : "keptNo")}</Fact>
        <Fact name={word("free")}>
          {status.freeBytes === undefined
            ? word("freeUnknown")
            : `${formatNumber(status.freeBytes / BYTES_PER_MB, 0, language)} MB`}
        </Fact>
      </dl>
    </Sheet>
  );
}

const Fact = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);
