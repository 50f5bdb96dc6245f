import { useParams } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { EmptyState } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { pathWords } from "../../words/path/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { addressOf } from "../review/addresses.ts";
import { MissingElement, WorkingElement } from "../review/element-states.tsx";
import { ElementPath } from "./element-path.tsx";

/** From readings to the axis of one element: every step with its number, and what would be without it. */
export function Component() {
  const job = useJob();
  const { element = "" } = useParams();
  const word = useWords(pathWords);
  const answer = useAnswer(
    async (desk) => ({ element, path: await desk.review.path(job.id, element) }),
    [job.id, element, job.revision],
  );
  const row = job.elements.find(({ id }) => id === element);
  if (row === undefined) return <MissingElement element={element} />;
  if (answer?.element !== element) return <Loading />;
  if (answer.path === undefined) return <WorkingElement element={element} />;
  if (Number.isNaN(row.lowestOffsetM))
    return (
      <Page title={word("title", { element })}>
        <EmptyState
          title={word("noPathTitle")}
          actions={<LinkButton to={addressOf.element(job.id, element)}>{word("toOverview")}</LinkButton>}
        >
          <p>{word("noPathText")}</p>
        </EmptyState>
      </Page>
    );
  return <ElementPath key={element} element={element} path={answer.path} />;
}
