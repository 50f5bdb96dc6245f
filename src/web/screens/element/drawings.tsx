import { useState } from "react";
import type { ElementResult } from "#core";
import { figures } from "#figures";
import { FigureView } from "../../components/figure-view.tsx";
import { Tabs } from "../../components/tabs.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementWords } from "../../words/element/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { AxisTable } from "./axis-table.tsx";

export interface DrawingsProps {
  readonly job: string;
  readonly element: string;
  readonly result: ElementResult;
  readonly revision: number;
}

/** The drawings of the report, one at a time. */
export function Drawings({ job, element, result, revision }: DrawingsProps) {
  const word = useWords(elementWords);
  const language = useLanguage();
  const [shown, setShown] = useState(figures[0]?.id ?? "");
  return (
    <Tabs
      label={word("drawings")}
      selected={shown}
      onSelect={setShown}
      tabs={figures.map(({ id, text }) => ({
        id,
        title: text[language].title,
        content: <Drawing {...{ job, element, result, revision }} figure={id} title={text[language].title} />,
      }))}
    />
  );
}

function Drawing({
  job,
  element,
  result,
  revision,
  figure,
  title,
}: DrawingsProps & { readonly figure: string; readonly title: string }) {
  const language = useLanguage();
  const svg = useAnswer(
    (asked) => asked.figure(job, element, figure, language),
    [job, element, figure, language, revision],
  );
  if (svg === undefined) return null;
  return <FigureView svg={svg} label={`${element}: ${title}`} table={<AxisTable result={result} />} />;
}
