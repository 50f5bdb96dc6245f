import { useState } from "react";
import { formatCoverage, verdictWords } from "#text";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { Notice } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import { verdictWords as screenWords } from "../../words/verdict/words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { VerdictView } from "../../worker/desk-review.ts";
import { VerdictTable } from "../element/verdict-table.tsx";
import { addressOf } from "../review/addresses.ts";
import { ElementParts } from "../review/element-parts.tsx";
import { ReasonDialog } from "../review/reason-dialog.tsx";
import shared from "../review/review.module.css";
import { ReviewTools } from "../review/review-tools.tsx";
import { useNeighbours } from "../review/use-neighbours.ts";
import { useSaved } from "../review/use-saved.ts";
import { DecidingRule } from "./deciding-rule.tsx";
import { SignDialog } from "./sign-dialog.tsx";
import { Signatures } from "./signatures.tsx";
import { WhatWouldSettle } from "./what-would-settle.tsx";

export function ElementVerdict({ view }: { readonly view: VerdictView }) {
  const job = useJob();
  const word = useWords(screenWords);
  const language = useLanguage();
  const saved = useSaved();
  const [asked, setAsked] = useState<"record" | "sign">();
  const { row, rules, recorded } = view;
  const element = row.id;
  const verdict = row.verdict ?? "not-judged";
  const said = verdictWords[language][verdict];
  const { previous, next } = useNeighbours(element, addressOf.verdict);
  const isRecorded = recorded?.isCurrent ?? false;
  return (
    <Page
      wide
      title={word("title", { element })}
      actions={
        <>
          <Button weight={isRecorded ? "plain" : "main"} onPress={() => setAsked("record")}>
            {word(recorded === undefined ? "record" : "recordAgain")}
          </Button>
          <Button weight={isRecorded ? "main" : "plain"} onPress={() => setAsked("sign")}>
            {word("sign")}
          </Button>
          <ReviewTools previous={previous} next={next} open={(other) => addressOf.verdict(job.id, other)} />
        </>
      }
    >
      <ElementParts element={element} />
      <div className={shared["line"]}>
        <VerdictBadge verdict={verdict} large />
      </div>
      <Cautions view={view} />
      <div className={shared["columns"]}>
        <div className={shared["column"]}>
          {rules.length === 0 ? (
            <p>{word("noRules")}</p>
          ) : (
            <>
              <DecidingRule view={view} />
              <Sheet title={word("all")}>
                <VerdictTable verdicts={rules.map(({ judgement }) => judgement)} />
              </Sheet>
            </>
          )}
          <WhatWouldSettle view={view} />
        </div>
        <div className={shared["column"]}>
          <Sheet title={word("recorded")}>
            <Recorded view={view} />
          </Sheet>
          <Sheet title={word("signatures")}>
            <Signatures seals={view.seals} />
          </Sheet>
          <Sheet title={word("decisionTitle")}>
            <p>
              {word(`decision_${view.decision.rule}`, {
                probability: formatCoverage(view.decision.probability, language),
              })}
            </p>
            <p className={shared["soft"]}>{word("caution")}</p>
          </Sheet>
        </div>
      </div>
      <ReasonDialog
        title={word("recordTitle", { element, verdict: said })}
        isOpen={asked === "record"}
        onClose={() => setAsked(undefined)}
        action={word("record")}
        usual={word("recordUsual")}
        onGive={(reason) => {
          setAsked(undefined);
          const done = word("recordDone", { element, verdict: said });
          void saved(desk().review.recordVerdict(job.id, element, reason), done);
        }}
      >
        <p>{word("recordText")}</p>
      </ReasonDialog>
      <SignDialog view={view} isOpen={asked === "sign"} onClose={() => setAsked(undefined)} />
    </Page>
  );
}

/** What somebody should know before recording or signing. */
function Cautions({ view: { row, runs } }: { readonly view: VerdictView }) {
  const word = useWords(screenWords);
  const waiting = runs.filter(({ acceptance }) => acceptance !== "accepted").map(({ run }) => run);
  return (
    <>
      {row.inConflict ? <Notice>{word("signConflict")}</Notice> : null}
      {waiting.length === 0 ? null : (
        <Notice>
          <p>{word("notAccepted", { runs: waiting.join(", ") })}</p>
        </Notice>
      )}
    </>
  );
}

function Recorded({ view: { recorded } }: { readonly view: VerdictView }) {
  const word = useWords(screenWords);
  const language = useLanguage();
  const time = useTime();
  if (recorded === undefined) return <p className={shared["soft"]}>{word("recordedNone")}</p>;
  const { verdict, author, wall, reason, isCurrent } = recorded;
  return (
    <>
      <p>
        {word("recordedBy", { verdict: verdictWords[language][verdict], author, when: time(wall), reason })}
      </p>
      {isCurrent ? null : <Notice>{word("recordedOld")}</Notice>}
    </>
  );
}
