import { useRef, useState } from "react";
import type { Verdict } from "#core";
import { useJob } from "../../app/job-frame.tsx";
import { Button, LinkButton } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Measured } from "../../components/measured.tsx";
import { EmptyState } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { readingsWords } from "../../words/readings/words.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { RunReview } from "../../worker/desk-review.ts";
import { AcceptanceLine } from "../review/acceptance-line.tsx";
import { addressOf } from "../review/addresses.ts";
import { ElementParts } from "../review/element-parts.tsx";
import { ReasonDialog } from "../review/reason-dialog.tsx";
import shared from "../review/review.module.css";
import { ReviewTools } from "../review/review-tools.tsx";
import { useSaved } from "../review/use-saved.ts";
import { ChangeList } from "./change-list.tsx";
import { CheckList } from "./check-list.tsx";
import { ReadingsPlot } from "./readings-plot.tsx";
import styles from "./readings-screen.module.css";
import { ReadingsList, type ShownReading } from "./readings-table.tsx";

/** What is being asked: to set these rows aside, to put them back, or to accept the run. */
type Asked =
  | { readonly does: "aside" | "back"; readonly rows: readonly number[] }
  | { readonly does: "accept" };

export function RunReadings({ review }: { readonly review: RunReview }) {
  const job = useJob();
  const word = useWords(readingsWords);
  const common = useWords(reviewWords);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [standing, setStanding] = useState(0);
  const [asked, setAsked] = useState<Asked>();
  const act = useActs(review, () => {
    setAsked(undefined);
    setChosen(new Set());
  });
  const rows = review.table.rows.map(
    ({ cells, aside }, index): ShownReading => ({
      index,
      cells,
      reason: aside?.reason,
      isChanged: review.changes[index] !== undefined,
    }),
  );
  const turn = (row: ShownReading) => {
    const does = row.reason === undefined ? "aside" : "back";
    const picked = rows.filter(
      ({ index, reason }) => chosen.has(String(index)) && (reason === undefined) === (does === "aside"),
    );
    setAsked({ does, rows: (picked.length > 0 ? picked : [row]).map(({ index }) => index) });
  };
  const isAccepted = review.acceptance.state === "accepted";
  const to = (run: string | undefined) => (run === undefined ? undefined : addressOf.readings(job.id, run));
  const accept = () => setAsked({ does: "accept" });
  const count = asked !== undefined && "rows" in asked ? asked.rows.length : 0;
  return (
    <Page
      wide
      title={review.row.id}
      lead={<Lead review={review} />}
      actions={
        <>
          {isAccepted && review.nextWaiting !== undefined ? (
            <LinkButton weight="main" to={addressOf.readings(job.id, review.nextWaiting)}>
              {word("nextWaiting", { run: review.nextWaiting })}
            </LinkButton>
          ) : null}
          <Button weight={isAccepted ? "plain" : "main"} onPress={accept}>
            {word(review.acceptance.state === "waiting" ? "accept" : "acceptAgain")}
          </Button>
          {review.before === undefined ? null : (
            <LinkButton to={to(review.before)!}>{common("previous", { name: review.before })}</LinkButton>
          )}
          {review.after === undefined ? null : (
            <LinkButton to={to(review.after)!}>{common("next", { name: review.after })}</LinkButton>
          )}
          <ReviewTools
            previous={to(review.before)}
            next={to(review.after)}
            accept={accept}
            open={(element) => addressOf.element(job.id, element)}
          />
        </>
      }
    >
      <ElementParts element={review.row.elementId} />
      <ElementNow review={review} />
      <div className={shared["columns"]}>
        <div className={shared["column"]}>
          {rows.length === 0 ? (
            <EmptyState title={word("keptTitle")}>
              <p>{word("keptText")}</p>
            </EmptyState>
          ) : (
            <ReadingsList
              review={review}
              rows={rows}
              chosen={chosen}
              onChoose={setChosen}
              onStand={setStanding}
              onTurn={turn}
            />
          )}
          <Sheet title={word("changes")}>
            <ChangeList changes={review.changes} />
          </Sheet>
        </div>
        <div className={shared["column"]}>
          <Sheet title={word("plot")}>
            <ReadingsPlot review={review} standing={standing} />
          </Sheet>
          <Sheet title={word("checks")}>
            {review.element.verdict === undefined ? (
              <p role="status">{common("working")}</p>
            ) : (
              <CheckList checks={review.checks} />
            )}
            <AcceptanceLine acceptance={review.acceptance} />
          </Sheet>
          <Sheet title={word("findings")}>
            <FindingList findings={review.row.findings} />
          </Sheet>
        </div>
      </div>
      <ReasonDialog
        title={word(asked?.does === "back" ? "backTitle" : "asideTitle", { count })}
        isOpen={asked !== undefined && asked.does !== "accept"}
        onClose={() => setAsked(undefined)}
        action={word(asked?.does === "back" ? "putBack" : "setAside")}
        often={
          asked?.does === "back"
            ? [word("oftenChecked")]
            : [word("oftenMoved"), word("oftenDepth"), word("oftenRepeat"), word("oftenTyped")]
        }
        onGive={(reason) => {
          if (asked !== undefined && asked.does !== "accept") void act.turn(asked.does, asked.rows, reason);
        }}
      >
        <p>{word(asked?.does === "back" ? "backText" : "asideText")}</p>
      </ReasonDialog>
      <ReasonDialog
        title={word("acceptTitle", { run: review.row.id })}
        isOpen={asked?.does === "accept"}
        onClose={() => setAsked(undefined)}
        action={word("accept")}
        usual={word("acceptUsual", {
          look: review.checks.filter(({ outcome }) => outcome === "look").length,
          aside: review.row.setAside,
        })}
        onGive={(reason) => void act.accept(reason)}
      >
        <CheckList checks={review.checks.filter(({ outcome }) => outcome === "look")} />
      </ReasonDialog>
    </Page>
  );
}

/** Writes what was asked; `done` puts the questions away. */
function useActs({ row: { id: run }, table }: RunReview, done: () => void) {
  const { id: job } = useJob();
  const word = useWords(readingsWords);
  const saved = useSaved();
  const places = (rows: readonly number[]) => rows.map((row) => table.rows[row]!.place);
  const write = (does: "aside" | "back", rows: readonly number[], reason: string) =>
    does === "aside"
      ? desk().setAside(job, run, places(rows), reason)
      : desk().putBack(job, run, places(rows), reason);
  return {
    turn: async (does: "aside" | "back", rows: readonly number[], reason: string) => {
      done();
      const text = word(does === "aside" ? "asideDone" : "backDone", { count: rows.length });
      await saved(
        write(does, rows, reason),
        text,
        () => void write(does === "aside" ? "back" : "aside", rows, word("undoReason")),
      );
    },
    accept: async (reason: string) => {
      done();
      await saved(desk().review.acceptReadings(job, run, reason), word("acceptDone", { run }));
    },
  };
}

function Lead({ review: { row } }: { readonly review: RunReview }) {
  const word = useWords(readingsWords);
  const time = useTime();
  const places = {
    element: row.elementId,
    when: row.startedAt === undefined ? word("unknown") : time(row.startedAt),
    operator: row.operator ?? word("unknown"),
    instrument: row.instrumentId === "" ? word("unknown") : row.instrumentId,
  };
  return row.tubeId === undefined ? word("lead", places) : word("leadTube", { ...places, tube: row.tubeId });
}

/** The verdict on the element as it is now, and as it was when the run was opened. */
function ElementNow({ review: { element } }: { readonly review: RunReview }) {
  const word = useWords(readingsWords);
  const opened = useRef<Verdict>(undefined);
  opened.current ??= element.verdict;
  const { verdict, deciding } = element;
  if (verdict === undefined) return null;
  const isOther = opened.current !== undefined && opened.current !== verdict;
  return (
    <div className={styles["verdicts"]} role="status">
      <div>
        <span className={styles["note"]}>{word("verdictNow")}</span>
        <VerdictBadge verdict={verdict} />
        {deciding === undefined ? null : <Measured {...deciding} />}
      </div>
      {isOther ? (
        <div>
          <span className={styles["note"]}>{word("verdictBefore")}</span>
          <VerdictBadge verdict={opened.current!} />
          <strong>{word("verdictChanged")}</strong>
        </div>
      ) : null}
    </div>
  );
}
