import { useParams } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { MissingElement, WorkingElement } from "../review/element-states.tsx";
import { ElementVerdict } from "./element-verdict.tsx";

/** The verdict on one element: value, limit, how sure, by which rule; recorded and signed here. */
export function Component() {
  const job = useJob();
  const { element = "" } = useParams();
  const language = useLanguage();
  const answer = useAnswer(
    async (desk) => ({ element, verdict: await desk.review.verdict(job.id, element, language) }),
    [job.id, element, language, job.revision],
  );
  if (job.elements.every(({ id }) => id !== element)) return <MissingElement element={element} />;
  if (answer?.element !== element) return <Loading />;
  if (answer.verdict === undefined) return <WorkingElement element={element} />;
  return <ElementVerdict key={element} view={answer.verdict} />;
}
