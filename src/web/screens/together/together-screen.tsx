import { useParams } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { EmptyState } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { togetherWords } from "../../words/together/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { addressOf } from "../review/addresses.ts";
import { ElementParts } from "../review/element-parts.tsx";
import { MissingElement, WorkingElement } from "../review/element-states.tsx";
import { ReviewTools } from "../review/review-tools.tsx";
import { useNeighbours } from "../review/use-neighbours.ts";
import { HoleOfRuns } from "./hole-of-runs.tsx";

/** The runs of an element beside each other: their courses, their differences, and which of them count. */
export function Component() {
  const job = useJob();
  const { element = "" } = useParams();
  const word = useWords(togetherWords);
  const { previous, next } = useNeighbours(element, addressOf.together);
  const answer = useAnswer(
    async (desk) => ({ element, holes: await desk.review.together(job.id, element) }),
    [job.id, element, job.revision],
  );
  if (job.elements.every(({ id }) => id !== element)) return <MissingElement element={element} />;
  if (answer?.element !== element) return <Loading />;
  if (answer.holes === undefined) return <WorkingElement element={element} />;
  return (
    <Page
      wide
      title={word("title", { element })}
      lead={word("lead")}
      actions={
        <ReviewTools previous={previous} next={next} open={(other) => addressOf.together(job.id, other)} />
      }
    >
      <ElementParts element={element} />
      {answer.holes.length === 0 ? (
        <EmptyState
          title={word("noRunsTitle")}
          actions={<LinkButton to={addressOf.element(job.id, element)}>{word("toOverview")}</LinkButton>}
        >
          <p>{word("noRunsText")}</p>
        </EmptyState>
      ) : (
        answer.holes.map((hole) => (
          <Sheet
            key={hole.tube ?? ""}
            title={hole.tube === undefined ? word("holeOwn") : word("hole", { tube: hole.tube })}
          >
            <HoleOfRuns hole={hole} />
          </Sheet>
        ))
      )}
    </Page>
  );
}
