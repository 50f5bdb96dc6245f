import { useState } from "react";
import { useSearchParams } from "react-router";
import { sentenceOf } from "#text";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { Button } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { TextField } from "../../components/text-field.tsx";
import { tell } from "../../components/toast.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { historyWords } from "../../words/history/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { BrokenChain, TimelineRow } from "../../worker/desk-record.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { saveFile } from "../bring-in/save-file.ts";
import styles from "./history-screen.module.css";
import { ProofDialog } from "./proof-dialog.tsx";
import { TimelineTable } from "./timeline-table.tsx";

const PAGE = 300;

/** What happened: every entry, who wrote it, on which device and why; and the proof that it is part of the record. */
export function Component() {
  const job = useJob();
  const word = useWords(historyWords);
  const language = useLanguage();
  const [search, setSearch] = useSearchParams();
  const [shown, setShown] = useState(PAGE);
  const [chosen, setChosen] = useState<TimelineRow>();
  const [proven, setProven] = useState<TimelineRow>();
  const about = search.get("about") ?? "";
  const isAsideOnly = search.get("show") === "aside";
  const seek = (key: "about" | "show", value: string) =>
    setSearch(
      (before) => {
        const next = new URLSearchParams(before);
        if (value === "") next.delete(key);
        else next.set(key, value);
        return next;
      },
      { replace: true },
    );
  const line = useAnswer(
    (asked) => asked.record.timeline(job.id, { about, isAsideOnly }, 0, shown, language),
    [job.id, job.entries, about, isAsideOnly, shown, language],
  );
  if (line === undefined) return <Loading />;
  const current = line.rows.find(({ id }) => id === chosen?.id) ?? line.rows[0];
  return (
    <Page
      wide
      title={word("title")}
      lead={word("lead")}
      actions={
        <>
          {current === undefined ? null : (
            <Button weight="main" onPress={() => setProven(current)}>
              {word("proof")}
            </Button>
          )}
          <EvidenceButton />
        </>
      }
    >
      <Broken broken={line.broken} />
      {job.entries === 0 ? (
        <EmptyState title={word("emptyTitle")}>
          <p>{word("emptyText")}</p>
        </EmptyState>
      ) : (
        <>
          <div className={styles["filter"]}>
            <TextField
              label={word("about")}
              hint={word("aboutHint")}
              type="search"
              autoComplete="off"
              value={about}
              onChange={(typed) => seek("about", typed)}
            />
            <ChoiceBar
              label={word("show")}
              value={isAsideOnly ? "aside" : "all"}
              choices={[
                { id: "all", text: word("all") },
                { id: "aside", text: word("asideOnly") },
              ]}
              onChange={(id) => seek("show", id === "aside" ? "aside" : "")}
            />
          </div>
          {line.rows.length === 0 ? (
            <EmptyState
              title={word("noneTitle")}
              actions={<Button onPress={() => setSearch({}, { replace: true })}>{word("noneAction")}</Button>}
            >
              <p>{word("noneText")}</p>
            </EmptyState>
          ) : (
            <TimelineTable rows={line.rows} onFocus={setChosen} onOpen={setProven} />
          )}
          {line.total > line.rows.length && line.rows.length > 0 ? (
            <div>
              <Button onPress={() => setShown(shown + PAGE)}>
                {word("more", { count: line.total - line.rows.length })}
              </Button>
            </div>
          ) : null}
        </>
      )}
      <ProofDialog row={proven} onClose={() => setProven(undefined)} />
    </Page>
  );
}

/** The whole record in one file, as the office makes it. */
function EvidenceButton() {
  const job = useJob();
  const word = useWords(historyWords);
  const language = useLanguage();
  const [isBusy, setBusy] = useState(false);
  const save = async () => {
    setBusy(true);
    const file = await desk().record.evidence(job.id);
    setBusy(false);
    if (file.ok) saveFile(`${job.id}-evidence.zip`, file.value, "application/zip");
    tell({
      text: file.ok
        ? word("evidenceDone")
        : word("evidenceFailed", { why: sentenceOf(file.error, language) }),
    });
  };
  return (
    <Button isPending={isBusy} onPress={() => void save()}>
      {word("evidence")}
    </Button>
  );
}

const SENTENCES = { gap: "brokenGap", fork: "brokenFork", link: "brokenLink" } as const;

function Broken({ broken }: { readonly broken: readonly BrokenChain[] }) {
  const word = useWords(historyWords);
  return broken.map(({ device, deviceName, what, from, to, waiting }) => (
    <Notice key={`${device} ${what} ${from}`}>
      <p>{word(SENTENCES[what], { device: deviceName, from, to, waiting })}</p>
    </Notice>
  ));
}
