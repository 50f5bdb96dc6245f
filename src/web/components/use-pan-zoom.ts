import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from "react";

const STEP_PX = 40;
const LARGEST = 12;

interface Held {
  scale: number;
  x: number;
  y: number;
}

/** Moves and enlarges a sheet inside its place: dragging, wheel with Ctrl, arrow keys, plus, minus and 0. */
export function usePanZoom(place: RefObject<HTMLElement | null>, sheet: RefObject<HTMLElement | null>) {
  const held = useRef<Held>({ scale: 1, x: 0, y: 0 });
  const show = () => {
    const { scale, x, y } = held.current;
    if (sheet.current !== null) sheet.current.style.transform = `translate(${x}px, ${y}px) scale(${scale})`;
  };
  const zoomAt = (factor: number, atX: number, atY: number) => {
    const { scale, x, y } = held.current;
    const next = Math.min(LARGEST, Math.max(1, scale * factor));
    const ratio = next / scale;
    held.current =
      next === 1
        ? { scale: 1, x: 0, y: 0 }
        : { scale: next, x: atX - (atX - x) * ratio, y: atY - (atY - y) * ratio };
    show();
  };
  const zoomBy = (factor: number) => {
    const box = place.current?.getBoundingClientRect();
    if (box !== undefined) zoomAt(factor, box.width / 2, box.height / 2);
  };
  const move = (dx: number, dy: number) => {
    held.current = { ...held.current, x: held.current.x + dx, y: held.current.y + dy };
    show();
  };
  const reset = () => {
    held.current = { scale: 1, x: 0, y: 0 };
    show();
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the functions work on what is held, which never changes its place
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    // React hears the wheel too late to keep the page from moving
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      zoomAt(Math.exp(-event.deltaY / 300), event.clientX - box.left, event.clientY - box.top);
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [place]);
  const handlers = {
    onPointerDown: (event: PointerEvent) => event.currentTarget.setPointerCapture(event.pointerId),
    onPointerMove: (event: PointerEvent) => {
      if (event.buttons === 1 && held.current.scale > 1) move(event.movementX, event.movementY);
    },
    onKeyDown: (event: KeyboardEvent) => {
      const act = KEYS[event.key];
      if (act === undefined) return;
      event.preventDefault();
      if (act === "fit") reset();
      else if (typeof act === "number") zoomBy(act);
      else move(act.dx * STEP_PX, act.dy * STEP_PX);
    },
  };
  return { zoomBy, reset, handlers };
}

const KEYS: Readonly<Record<string, number | "fit" | { readonly dx: number; readonly dy: number }>> = {
  "+": 1.25,
  "=": 1.25,
  "-": 0.8,
  "0": "fit",
  ArrowLeft: { dx: 1, dy: 0 },
  ArrowRight: { dx: -1, dy: 0 },
  ArrowUp: { dx: 0, dy: 1 },
  ArrowDown: { dx: 0, dy: -1 },
};
