import { useEffect, useState } from "react";
import type { Issue } from "#core";
import type { GivenSettings } from "#formats";
import { onFilesOffered, takeOfferedFiles } from "../../app/dropped-files.ts";
import { useJob } from "../../app/job-frame.tsx";
import { Button, LinkButton } from "../../components/button.tsx";
import { FileDrop } from "../../components/file-drop.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { EmptyState, ErrorState, Notice } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { Progress } from "../../components/progress.tsx";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk, told } from "../../worker/desk-client.ts";
import type { MappingView } from "../../worker/desk-logger.ts";
import { readFiles } from "../../worker/read-files.ts";
import { merged } from "./given.ts";
import { MappingEditor } from "./mapping-editor.tsx";

type Step =
  | { readonly at: "waiting"; readonly said?: string; readonly to?: string }
  | { readonly at: "reading"; readonly done?: number; readonly total?: number }
  | { readonly at: "refused"; readonly findings: readonly Issue[] }
  | { readonly at: "schedule"; readonly file: string }
  | { readonly at: "mapping"; readonly view: MappingView; readonly given: GivenSettings };

/** Brings a file in: tells what it is, and maps readings of any logger onto a run. */
export function Component() {
  const job = useJob();
  const word = useWords(bringInWords);
  const [step, setStep] = useState<Step>({ at: "waiting" });
  const address = `/jobs/${encodeURIComponent(job.id)}`;

  const take = async (dropped: readonly File[]) => {
    setStep({ at: "reading" });
    const files = await readFiles(dropped);
    const [first] = files;
    if (first === undefined) return setStep({ at: "waiting" });
    const kind = await desk().logger.kindOf(files);
    if (kind === "schedule") return setStep({ at: "schedule", file: first.name });
    if (kind === "mapping") {
      const kept = await desk().logger.importMapping(first);
      return setStep(
        kept.ok
          ? { at: "waiting", said: word("mappingDone", { name: kept.value }) }
          : { at: "refused", findings: kept.error },
      );
    }
    if (kind === "job-folder") {
      const progress = (done: number, total: number) => setStep({ at: "reading", done, total });
      const done = await desk().importFolder(files, job.id, told(progress));
      if (!done.ok) return setStep({ at: "refused", findings: done.error });
      const { name, added } = done.value;
      return setStep({ at: "waiting", said: word("folderDone", { name, count: added }) });
    }
    const opened = await desk().logger.open(job.id, first);
    setStep(
      opened.ok
        ? { at: "mapping", view: opened.value, given: {} }
        : { at: "refused", findings: opened.error },
    );
  };

  // files that were dropped on another screen, or beside the place for them on this one
  // biome-ignore lint/correctness/useExhaustiveDependencies: to be asked once, and whenever files are offered
  useEffect(() => {
    const look = () => {
      const files = takeOfferedFiles();
      if (files.length > 0) void take(files);
    };
    look();
    return onFilesOffered(look);
  }, [job.id]);

  const change = async (more: GivenSettings) => {
    if (step.at !== "mapping") return;
    const given = merged(step.given, more);
    const changed = await desk().logger.change(given);
    // a setting with which nothing can be read is not taken: the file stays as it was, and the findings say why
    setStep(
      changed.ok
        ? { at: "mapping", view: changed.value, given }
        : { ...step, view: { ...step.view, findings: changed.error } },
    );
  };

  if (step.at === "mapping")
    return (
      <Page
        wide
        title={word("title")}
        lead={word("understood", {
          file: step.view.file,
          taken: step.view.taken,
          count: step.view.count,
        })}
        actions={<Button onPress={() => setStep({ at: "waiting" })}>{word("another")}</Button>}
      >
        <MappingEditor
          view={step.view}
          onChange={(more) => void change(more)}
          onDone={(said, element) =>
            setStep({ at: "waiting", said, to: `${address}/elements/${encodeURIComponent(element)}` })
          }
        />
      </Page>
    );
  return (
    <Page title={word("title")} lead={word("lead")}>
      {step.at === "waiting" && step.said !== undefined ? (
        <div role="status">
          <Notice
            actions={step.to === undefined ? null : <LinkButton to={step.to}>{word("toElement")}</LinkButton>}
          >
            {step.said}
          </Notice>
        </div>
      ) : null}
      {step.at === "refused" ? (
        <ErrorState title={word("unreadableTitle")}>
          <p>{word("unreadableText")}</p>
          <FindingList findings={step.findings} />
        </ErrorState>
      ) : null}
      {step.at === "schedule" ? (
        <EmptyState
          title={word("scheduleTitle")}
          actions={<LinkButton to={`${address}/schedule`}>{word("toSchedule")}</LinkButton>}
        >
          <p>{word("scheduleText", { file: step.file })}</p>
        </EmptyState>
      ) : null}
      {step.at === "reading" ? (
        <Progress label={word("reading")} done={step.done ?? 0} total={step.total ?? 0} />
      ) : (
        <FileDrop label={word("drop")} choose={word("choose")} onFiles={(files) => void take(files)} />
      )}
    </Page>
  );
}
