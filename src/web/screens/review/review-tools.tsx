import { useState } from "react";
import { useNavigate } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import { FindElement } from "./find-element.tsx";
import { KeyHelp } from "./key-help.tsx";
import { type ReviewKeys, useReviewKeys } from "./use-review-keys.ts";

export interface ReviewToolsProps extends Pick<ReviewKeys, "accept"> {
  /** addresses of the one before and the next one; undefined at the ends */
  readonly previous?: string | undefined;
  readonly next?: string | undefined;
  /** where an element that was found is opened */
  readonly open: (element: string) => string;
}

/** Keys of the review with the list of them, and finding an element. Stands among the actions of a page. */
export function ReviewTools({ previous, next, accept, open }: ReviewToolsProps) {
  const job = useJob();
  const word = useWords(reviewWords);
  const navigate = useNavigate();
  const [shown, setShown] = useState<"keys" | "find">();
  const to = (address: string | undefined) =>
    address === undefined ? undefined : () => void navigate(address);
  useReviewKeys({
    previous: to(previous),
    next: to(next),
    accept,
    find: () => setShown("find"),
    help: () => setShown("keys"),
  });
  return (
    <>
      <Button weight="quiet" onPress={() => setShown("find")}>
        {word("keyFind")} (/)
      </Button>
      <Button weight="quiet" onPress={() => setShown("keys")}>
        {word("keysShow")}
      </Button>
      <KeyHelp isOpen={shown === "keys"} onClose={() => setShown(undefined)} />
      <FindElement
        isOpen={shown === "find"}
        onClose={() => setShown(undefined)}
        elements={job.elements}
        onOpen={(element) => {
          setShown(undefined);
          void navigate(open(element));
        }}
      />
    </>
  );
}
