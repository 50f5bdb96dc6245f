import { type ReactNode, useEffect, useMemo, useRef } from "react";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import { Button } from "./button.tsx";
import styles from "./figure-view.module.css";
import { safeSvg } from "./safe-svg.ts";
import { usePanZoom } from "./use-pan-zoom.ts";

export interface FigureViewProps {
  /** drawn by #figures */
  readonly svg: string;
  /** said to those who cannot see it, besides what the drawing says of itself */
  readonly label: string;
  /** the numbers of the drawing as a table, for reading and copying */
  readonly table?: ReactNode;
}

/** A drawing as it stands in reports: to be moved and enlarged by pointer and keyboard, with its numbers below. */
export function FigureView({ svg, label, table }: FigureViewProps) {
  const word = useWords(componentWords);
  const place = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const drawing = useMemo(() => safeSvg(svg), [svg]);
  const { zoomBy, reset, handlers } = usePanZoom(place, sheet);
  useEffect(() => {
    if (drawing.ok) sheet.current?.replaceChildren(document.importNode(drawing.value, true));
  }, [drawing]);
  if (!drawing.ok) return <p role="alert">{word("figureUnsafe")}</p>;
  return (
    <figure className={styles["figure"]}>
      <div className={styles["tools"]}>
        <Button weight="quiet" onPress={() => zoomBy(1.25)}>
          {word("figureLarger")}
        </Button>
        <Button weight="quiet" onPress={() => zoomBy(0.8)}>
          {word("figureSmaller")}
        </Button>
        <Button weight="quiet" onPress={reset}>
          {word("figureFit")}
        </Button>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a place that is moved about in, with its own keys */}
      <div
        ref={place}
        className={styles["place"]}
        role="group"
        aria-label={`${label}. ${word("figureKeys")}`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved by the keyboard
        tabIndex={0}
        {...handlers}
      >
        <div ref={sheet} className={styles["sheet"]} />
      </div>
      {table === undefined ? null : (
        <details className={styles["numbers"]}>
          <summary>{word("figureTable")}</summary>
          {table}
        </details>
      )}
    </figure>
  );
}
