import { useState } from "react";
import { CLOSURE_MODELS, type ClosureModel, PATH_METHODS, type PathMethodId } from "#core";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { ChoiceField } from "../../components/choice-field.tsx";
import { FigureView } from "../../components/figure-view.tsx";
import { Notice } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { pathWords } from "../../words/path/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { PathView, TrialChoices } from "../../worker/desk-review.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { AcceptanceLine } from "../review/acceptance-line.tsx";
import { addressOf } from "../review/addresses.ts";
import { ElementParts } from "../review/element-parts.tsx";
import { ReasonDialog } from "../review/reason-dialog.tsx";
import shared from "../review/review.module.css";
import { ReviewTools } from "../review/review-tools.tsx";
import { useNeighbours } from "../review/use-neighbours.ts";
import { useSaved } from "../review/use-saved.ts";
import styles from "./path-screen.module.css";
import { StepTable } from "./step-table.tsx";
import { TrialResult } from "./trial-result.tsx";

const USUAL_METHOD: PathMethodId = "minimum-curvature";

export function ElementPath({ element, path }: { readonly element: string; readonly path: PathView }) {
  const job = useJob();
  const word = useWords(pathWords);
  const saved = useSaved();
  const [isAccepting, setAccepting] = useState(false);
  const [method, setMethod] = useState<PathMethodId>(USUAL_METHOD);
  const [closure, setClosure] = useState(path.closure);
  const [without, setWithout] = useState<ReadonlySet<string>>(new Set());
  const { previous, next } = useNeighbours(element, addressOf.path);
  const isOther = method !== USUAL_METHOD || closure !== path.closure || without.size > 0;
  const accept = () => setAccepting(true);
  const choices: TrialChoices = {
    method,
    ...(closure === undefined || closure === path.closure ? {} : { closure }),
    without: [...without],
  };
  return (
    <Page
      wide
      title={word("title", { element })}
      lead={word("lead")}
      actions={
        <>
          <Button weight={path.acceptance.state === "accepted" ? "plain" : "main"} onPress={accept}>
            {word(path.acceptance.state === "waiting" ? "accept" : "acceptAgain")}
          </Button>
          <ReviewTools
            previous={previous}
            next={next}
            accept={accept}
            open={(other) => addressOf.path(job.id, other)}
          />
        </>
      }
    >
      <ElementParts element={element} />
      <AcceptanceLine acceptance={path.acceptance} />
      {path.waitingRuns.length === 0 ? null : (
        <Notice>
          <p>{word("notAccepted", { runs: path.waitingRuns.join(", ") })}</p>
        </Notice>
      )}
      {path.runs.map(({ run, steps, judgeable }) => (
        <Sheet key={run} title={word("steps", { run })}>
          {judgeable ? null : <Notice>{word("notJudgeable")}</Notice>}
          <StepTable
            steps={steps}
            switches={path.switches}
            without={without}
            onSwitch={(id) => setWithout(turned(without, id))}
          />
        </Sheet>
      ))}
      <Sheet
        title={word("trial")}
        actions={
          isOther ? (
            <Button
              weight="quiet"
              onPress={() => {
                setMethod(USUAL_METHOD);
                setClosure(path.closure);
                setWithout(new Set());
              }}
            >
              {word("trialBack")}
            </Button>
          ) : null
        }
      >
        <Choices
          method={method}
          onMethod={setMethod}
          usualClosure={path.closure}
          closure={closure}
          onClosure={setClosure}
        />
        {isOther ? <TrialPart element={element} choices={choices} /> : <p>{word("trialNothing")}</p>}
      </Sheet>
      <div className={shared["columns"]}>
        <Sheet title={word("section")}>
          <Drawing element={element} figure="section" title={word("section")} />
        </Sheet>
        <Sheet title={word("plan")}>
          <Drawing element={element} figure="plan" title={word("plan")} />
        </Sheet>
      </div>
      <ReasonDialog
        title={word("acceptTitle", { element })}
        isOpen={isAccepting}
        onClose={() => setAccepting(false)}
        action={word("accept")}
        usual={word("acceptUsual")}
        onGive={(reason) => {
          setAccepting(false);
          void saved(desk().review.acceptPath(job.id, element, reason), word("acceptDone", { element }));
        }}
      />
    </Page>
  );
}

const turned = (set: ReadonlySet<string>, id: string): ReadonlySet<string> =>
  set.has(id) ? new Set([...set].filter((each) => each !== id)) : new Set([...set, id]);

interface ChoicesProps {
  readonly method: PathMethodId;
  readonly onMethod: (method: PathMethodId) => void;
  readonly usualClosure: ClosureModel | undefined;
  readonly closure: ClosureModel | undefined;
  readonly onClosure: (closure: ClosureModel) => void;
}

function Choices({ method, onMethod, usualClosure, closure, onClosure }: ChoicesProps) {
  const word = useWords(pathWords);
  const named = (name: string, isUsual: boolean) => (isUsual ? word("asJob", { name }) : name);
  return (
    <div className={styles["choices"]}>
      <ChoiceField
        label={word("method")}
        value={method}
        choices={PATH_METHODS.map((id) => ({ id, text: named(word(`method-${id}`), id === USUAL_METHOD) }))}
        onChange={onMethod}
      />
      {closure === undefined ? null : (
        <ChoiceField
          label={word("closure")}
          value={closure}
          choices={CLOSURE_MODELS.map((id) => ({
            id,
            text: named(word(`closure-${id}`), id === usualClosure),
          }))}
          onChange={onClosure}
        />
      )}
    </div>
  );
}

function TrialPart({ element, choices }: { readonly element: string; readonly choices: TrialChoices }) {
  const job = useJob();
  const word = useWords(pathWords);
  const key = JSON.stringify(choices);
  const answer = useAnswer(
    async (asked) => ({ key, trial: await asked.review.trial(job.id, element, choices) }),
    [job.id, element, job.revision, key],
  );
  if (answer?.key !== key) return <p role="status">{word("trialWorking")}</p>;
  return answer.trial === undefined ? (
    <p role="alert">{word("trialNone")}</p>
  ) : (
    <TrialResult trial={answer.trial} />
  );
}

interface DrawingProps {
  readonly element: string;
  readonly figure: string;
  readonly title: string;
}

function Drawing({ element, figure, title }: DrawingProps) {
  const job = useJob();
  const language = useLanguage();
  const svg = useAnswer(
    (asked) => asked.figure(job.id, element, figure, language),
    [job.id, element, figure, language, job.revision],
  );
  return svg === undefined ? null : <FigureView svg={svg} label={`${element}: ${title}`} />;
}
