import { useState } from "react";
import type { GivenSettings } from "#formats";
import { FindingList } from "../../components/finding-list.tsx";
import { Notice } from "../../components/message.tsx";
import { Sheet } from "../../components/page.tsx";
import { Tick } from "../../components/tick.tsx";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { MappingView } from "../../worker/desk-logger.ts";
import styles from "./bring-in.module.css";
import { ColumnTable } from "./column-table.tsx";
import { ConventionSettings } from "./convention-settings.tsx";
import { LayoutSettings } from "./layout-settings.tsx";
import { openSettings } from "./open-settings.ts";
import { RunPlot } from "./run-plot.tsx";
import { RunTargetForm } from "./run-target-form.tsx";

/** How a file is understood, every part of it to be changed; below, the run that it becomes. */
export function MappingEditor({
  view,
  onChange,
  onDone,
}: {
  readonly view: MappingView;
  readonly onChange: (more: GivenSettings) => void;
  readonly onDone: (said: string, element: string) => void;
}) {
  const word = useWords(bringInWords);
  const [isConfirmed, setConfirmed] = useState(false);
  const open = openSettings(view);
  return (
    <>
      <Notice
        actions={
          open.length === 0 ? null : (
            <Tick text={word("confirm")} isTicked={isConfirmed} onChange={setConfirmed} />
          )
        }
      >
        {view.template === undefined ? null : <strong>{word("mappedBy", { name: view.template })} </strong>}
        {word("toLookAt", { count: open.length })}
      </Notice>
      <Sheet title={word("columns")}>
        <ColumnTable view={view} onChange={onChange} />
      </Sheet>
      <Sheet title={word("conventions")}>
        <ConventionSettings view={view} onChange={onChange} />
      </Sheet>
      <div className={styles["halves"]}>
        <Sheet title={word("plot")}>
          <RunPlot view={view} />
        </Sheet>
        <Sheet title={word("findings")}>
          <FindingList findings={view.findings} />
        </Sheet>
      </div>
      <Sheet title={word("layout")}>
        <LayoutSettings view={view} onChange={onChange} />
      </Sheet>
      <Sheet title={word("target")}>
        <RunTargetForm view={view} isLookedAt={open.length === 0 || isConfirmed} onDone={onDone} />
      </Sheet>
    </>
  );
}
