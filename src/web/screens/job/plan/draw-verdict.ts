import type { Verdict } from "#core";

const SIGN_WHITE = "#ffffff";
const SIGN_BLACK = "#111111";

/** The shape of a verdict on a canvas; the same shapes as `verdictSymbol` of the figures draws as SVG. @param r half its height, pixels. */
export function drawVerdict(
  pen: CanvasRenderingContext2D,
  verdict: Verdict,
  fill: string,
  outline: string,
  x: number,
  y: number,
  r: number,
): void {
  pen.save();
  pen.translate(x, y);
  pen.scale(r / 10, r / 10);
  pen.lineWidth = 1.8;
  pen.lineJoin = "round";
  pen.lineCap = "round";
  pen.fillStyle = fill;
  pen.strokeStyle = outline;
  outlines[verdict](pen);
  pen.fill();
  pen.stroke();
  pen.lineWidth = 3;
  signs[verdict](pen);
  pen.restore();
}

type Draw = (pen: CanvasRenderingContext2D) => void;

const circle: Draw = (pen) => {
  pen.beginPath();
  pen.arc(0, 0, 10, 0, 2 * Math.PI);
};

const polygon =
  (...points: readonly (readonly [number, number])[]): Draw =>
  (pen) => {
    pen.beginPath();
    for (const [x, y] of points) pen.lineTo(x, y);
    pen.closePath();
  };

const outlines: Readonly<Record<Verdict, Draw>> = {
  within: circle,
  "not-judged": circle,
  "too-close-to-call": polygon([0, -11.5], [12, 9.5], [-12, 9.5]),
  outside: polygon([-9.5, -9.5], [9.5, -9.5], [9.5, 9.5], [-9.5, 9.5]),
};

const strokes =
  (colour: string, path: string): Draw =>
  (pen) => {
    pen.strokeStyle = colour;
    pen.stroke(new Path2D(path));
  };

const signs: Readonly<Record<Verdict, Draw>> = {
  within: strokes(SIGN_WHITE, "M-5 0.5L-1.5 4.5L5 -4"),
  outside: strokes(SIGN_WHITE, "M-5 -5L5 5M5 -5L-5 5"),
  "too-close-to-call": (pen) => {
    pen.lineWidth = 2;
    strokes(SIGN_BLACK, "M-2.9 -1.8A2.9 2.9 0 1 1 1.2 0.9Q0 1.6 0 3.4")(pen);
    pen.fillStyle = SIGN_BLACK;
    pen.beginPath();
    pen.arc(0, 6.8, 1.35, 0, 2 * Math.PI);
    pen.fill();
  },
  "not-judged": () => {},
};
