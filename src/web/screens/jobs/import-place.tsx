import { useState } from "react";
import type { Issue, Result } from "#core";
import { Button } from "../../components/button.tsx";
import { FileDrop } from "../../components/file-drop.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { ErrorState } from "../../components/message.tsx";
import { Sheet } from "../../components/page.tsx";
import { Progress } from "../../components/progress.tsx";
import { jobsWords } from "../../words/jobs/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { Imported } from "../../worker/desk.ts";
import { desk, told } from "../../worker/desk-client.ts";
import { readFiles } from "../../worker/read-files.ts";

type State =
  | { readonly step: "waiting" }
  | { readonly step: "at-work"; readonly done: number; readonly total: number }
  | { readonly step: "done"; readonly outcome: Result<Imported, readonly Issue[]> };

/** Brings a job folder in, and says what was understood of it. */
export function ImportPlace({ onOpen }: { readonly onOpen: (job: string) => void }) {
  const word = useWords(jobsWords);
  const [state, setState] = useState<State>({ step: "waiting" });
  const bringIn = async (files: readonly File[]) => {
    const progress = (done: number, total: number) => setState({ step: "at-work", done, total });
    progress(0, 0);
    const outcome = await desk().importFolder(await readFiles(files), undefined, told(progress));
    setState({ step: "done", outcome });
    if (outcome.ok && outcome.value.findings.every(({ severity }) => severity === "note"))
      onOpen(outcome.value.job);
  };
  if (state.step === "at-work")
    return <Progress label={word("importing")} done={state.done} total={state.total} />;
  return (
    <>
      {state.step === "done" ? <Outcome outcome={state.outcome} onOpen={onOpen} /> : null}
      <FileDrop label={word("drop")} choose={word("choose")} onFiles={(files) => void bringIn(files)} />
    </>
  );
}

function Outcome({
  outcome,
  onOpen,
}: {
  readonly outcome: Result<Imported, readonly Issue[]>;
  readonly onOpen: (job: string) => void;
}) {
  const word = useWords(jobsWords);
  if (!outcome.ok)
    return (
      <ErrorState title={word("importFailedTitle")}>
        <p>{word("importFailedText")}</p>
        <FindingList findings={outcome.error} />
      </ErrorState>
    );
  const { job, name, added, findings } = outcome.value;
  return (
    <Sheet
      title={word("importFindings")}
      actions={
        <Button weight="main" onPress={() => onOpen(job)}>
          {word("openJob")}
        </Button>
      }
    >
      <p>{word("imported", { name, count: added })}</p>
      <FindingList findings={findings} />
    </Sheet>
  );
}
