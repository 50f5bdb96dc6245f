import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { EmptyState } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import { addressOf } from "./addresses.ts";
import { ElementParts } from "./element-parts.tsx";

/** The address names an element that the job does not have. */
export function MissingElement({ element }: { readonly element: string }) {
  const job = useJob();
  const word = useWords(reviewWords);
  if (job.work.phase === "fetching" || job.work.phase === "reading") return <Loading />;
  return (
    <Page title={element}>
      <EmptyState
        title={word("missingTitle", { name: element })}
        actions={<LinkButton to={addressOf.inbox(job.id)}>{word("toInbox")}</LinkButton>}
      >
        <p>{word("missingText")}</p>
      </EmptyState>
    </Page>
  );
}

/** The element is there and its result is not yet. */
export function WorkingElement({ element }: { readonly element: string }) {
  const word = useWords(reviewWords);
  return (
    <Page title={element}>
      <ElementParts element={element} />
      <p role="status">{word("working")}</p>
    </Page>
  );
}
