import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from "react";
import type { Verdict } from "#core";
import { figureWord, formatOffset, verdictWords } from "#text";
import { Button } from "../../../components/button.tsx";
import { usePreferences } from "../../../preferences/use-preferences.ts";
import { componentWords } from "../../../words/components/words.ts";
import { jobWords } from "../../../words/job/words.ts";
import { useWords } from "../../../words/use-words.ts";
import type { AxesView, ElementRow } from "../../../worker/desk.ts";
import { drawPlan } from "./draw-plan.ts";
import { type DrawnElement, drawnElements, elementAt } from "./drawn-elements.ts";
import { planInk } from "./plan-ink.ts";
import { moved, type PlanView, type Size, wholePlan, zoomed } from "./plan-view.ts";
import styles from "./site-plan.module.css";

export interface SitePlanProps {
  readonly elements: readonly ElementRow[];
  /** undefined until the first axes are there */
  readonly axes: AxesView | undefined;
  readonly levelM: number;
  /** verdicts that are shown in full; empty: all */
  readonly only: ReadonlySet<Verdict>;
  readonly onOpen: (element: string) => void;
}

const STEP_PX = 60;
/** Less than this between down and up is a press, not a move. */
const PRESS_PX = 5;

/** Every element to scale in its section: where the design has it at the level, where it was found, and its verdict. */
export function SitePlan({ elements, axes, levelM, only, onOpen }: SitePlanProps) {
  const { language, theme } = usePreferences();
  const word = useWords(jobWords);
  const common = useWords(componentWords);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const [view, setView] = useState<PlanView>();
  const [chosen, setChosen] = useState<string>();
  const held = useRef({ x: 0, y: 0, moved: 0 });
  const drawn = useMemo(() => drawnElements(elements, axes, levelM, only), [elements, axes, levelM, only]);
  const shown = view ?? (size.width > 0 ? wholePlan(elements, size) : undefined);

  useEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    const resized = new ResizeObserver(() =>
      setSize({ width: element.clientWidth, height: element.clientHeight }),
    );
    resized.observe(element);
    return () => resized.disconnect();
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme changes the ink that is read from the page
  useEffect(() => {
    const element = canvas.current;
    if (element === null || shown === undefined) return;
    const frame = requestAnimationFrame(() =>
      drawPlan(element, { drawn, view: shown, size, chosen, language, ink: planInk(element) }),
    );
    return () => cancelAnimationFrame(frame);
  }, [drawn, shown, size, chosen, language, theme]);

  useWheel(canvas, (factor, x, y) => {
    if (shown !== undefined) setView(zoomed(shown, size, factor, x, y));
  });

  const zoom = (factor: number) => {
    if (shown !== undefined) setView(zoomed(shown, size, factor, size.width / 2, size.height / 2));
  };
  const onPointerMove = (event: PointerEvent) => {
    if (event.buttons !== 1 || shown === undefined) return;
    held.current.moved += Math.abs(event.movementX) + Math.abs(event.movementY);
    setView(moved(shown, event.movementX, event.movementY));
  };
  const onPointerUp = (event: PointerEvent) => {
    if (shown === undefined || held.current.moved > PRESS_PX) return;
    const box = event.currentTarget.getBoundingClientRect();
    setChosen(elementAt(drawn, shown, size, event.clientX - box.left, event.clientY - box.top)?.row.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const act = shown === undefined ? undefined : keyAct(event, shown, size, elements, chosen);
    if (act === undefined) return;
    event.preventDefault();
    if ("view" in act) setView(act.view);
    else if (act.does === "choose") setChosen(act.element);
    else if (chosen !== undefined) onOpen(chosen);
  };
  const current = drawn.find(({ row }) => row.id === chosen);
  return (
    <div className={styles["place"]}>
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: it is moved and walked through by keys of its own */}
      <canvas
        ref={canvas}
        className={styles["canvas"]}
        tabIndex={0}
        role="application"
        aria-label={word("planLabel")}
        aria-describedby="plan-keys plan-chosen"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          held.current.moved = 0;
        }}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onDoubleClick={() => chosen !== undefined && onOpen(chosen)}
        onKeyDown={onKeyDown}
      />
      <p id="plan-keys" className={styles["keys"]}>
        {word("planKeys")}
      </p>
      <div className={styles["tools"]}>
        <Button weight="quiet" label={common("figureLarger")} onPress={() => zoom(1.4)}>
          +
        </Button>
        <Button weight="quiet" label={common("figureSmaller")} onPress={() => zoom(1 / 1.4)}>
          −
        </Button>
        <Button weight="quiet" onPress={() => setView(undefined)}>
          {word("planWhole")}
        </Button>
      </div>
      <output id="plan-chosen" className={styles["chosen"]} hidden={current === undefined}>
        {current === undefined ? null : (
          <>
            <strong>{current.row.id}</strong>
            <span>
              {current.row.verdict === undefined ? "…" : verdictWords[language][current.row.verdict]}
            </span>
            <span>{offsetText(current, word, language)}</span>
            <Button onPress={() => onOpen(current.row.id)}>{word("open")}</Button>
          </>
        )}
      </output>
      <span className={styles["north"]}>{figureWord("gridNorth", language)}</span>
    </div>
  );
}

function offsetText(
  { design, found }: DrawnElement,
  word: ReturnType<typeof useWords<keyof (typeof jobWords)["en"]>>,
  language: "en" | "de",
): string {
  if (design === undefined) return word("notAtLevel");
  if (found === undefined) return word("notRead");
  const offsetM = Math.hypot(found.eastM - design.eastM, found.northM - design.northM);
  return word("offsetAtLevel", { offset: formatOffset(offsetM, language) });
}

type Act =
  | { readonly view: PlanView }
  | { readonly does: "choose"; readonly element: string | undefined }
  | { readonly does: "open" };

function keyAct(
  event: KeyboardEvent,
  view: PlanView,
  size: Size,
  elements: readonly ElementRow[],
  chosen: string | undefined,
): Act | undefined {
  const middle = [size.width / 2, size.height / 2] as const;
  const step = (by: number): Act => {
    const at = elements.findIndex(({ id }) => id === chosen);
    const next = elements[(Math.max(at, by > 0 ? -1 : 0) + by + elements.length) % elements.length];
    return { does: "choose", element: next?.id };
  };
  switch (event.key) {
    case "+":
    case "=":
      return { view: zoomed(view, size, 1.4, ...middle) };
    case "-":
      return { view: zoomed(view, size, 1 / 1.4, ...middle) };
    case "0":
      return { view: wholePlan(elements, size) };
    case "ArrowLeft":
      return { view: moved(view, STEP_PX, 0) };
    case "ArrowRight":
      return { view: moved(view, -STEP_PX, 0) };
    case "ArrowUp":
      return { view: moved(view, 0, STEP_PX) };
    case "ArrowDown":
      return { view: moved(view, 0, -STEP_PX) };
    case "]":
      return step(1);
    case "[":
      return step(-1);
    case "Escape":
      return { does: "choose", element: undefined };
    case "Enter":
      return { does: "open" };
    default:
      return undefined;
  }
}

/** The wheel enlarges about the pointer. React hears it too late to keep the page from moving. */
function useWheel(
  canvas: React.RefObject<HTMLCanvasElement | null>,
  onZoom: (factor: number, x: number, y: number) => void,
): void {
  const latest = useRef(onZoom);
  latest.current = onZoom;
  useEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      latest.current(Math.exp(-event.deltaY / 400), event.clientX - box.left, event.clientY - box.top);
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [canvas]);
}
