import { type RefObject, useEffect, useState } from "react";

/** Tables up to this length are drawn whole. */
const DRAWN_WHOLE = 150;
const SPARE = 20;
const USUAL_ROW_PX = 32;

interface RowWindow {
  readonly from: number;
  readonly to: number;
  /** room of the rows that are not drawn, pixels */
  readonly before: number;
  readonly after: number;
}

/** Which rows of a long table are in sight, with some to spare. */
export function useRowWindow(place: RefObject<HTMLElement | null>, count: number): RowWindow {
  const [shown, setShown] = useState({ from: 0, to: DRAWN_WHOLE, row: USUAL_ROW_PX });
  const isLong = count > DRAWN_WHOLE;
  useEffect(() => {
    const element = place.current;
    if (element === null || !isLong) return;
    const look = () => {
      const row = element.querySelector<HTMLElement>("tr[data-row]")?.offsetHeight || USUAL_ROW_PX;
      const from = Math.max(0, Math.floor(element.scrollTop / row) - SPARE);
      const to = Math.ceil((element.scrollTop + element.clientHeight) / row) + SPARE;
      setShown((known) =>
        known.from === from && known.to === to && known.row === row ? known : { from, to, row },
      );
    };
    look();
    element.addEventListener("scroll", look, { passive: true });
    const resized = new ResizeObserver(look);
    resized.observe(element);
    return () => {
      element.removeEventListener("scroll", look);
      resized.disconnect();
    };
  }, [place, isLong]);
  if (!isLong) return { from: 0, to: count, before: 0, after: 0 };
  const from = Math.min(shown.from, count);
  const to = Math.min(shown.to, count);
  return { from, to, before: from * shown.row, after: (count - to) * shown.row };
}
