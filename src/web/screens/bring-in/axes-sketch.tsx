import type { LoggerConventions } from "#formats";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./bring-in.module.css";

const CENTRE = 80;
const REACH = 52;

/** A point so many degrees clockwise from the top of the drawing. */
const onCircle = (degrees: number, radius: number) => {
  const angle = (degrees * Math.PI) / 180;
  return { x: CENTRE + radius * Math.sin(angle), y: CENTRE - radius * Math.cos(angle) };
};

/** Where the logger's axes lie and which way a tilt counts, as it is set. */
export function AxesSketch({ conventions }: { readonly conventions: LoggerConventions }) {
  const word = useWords(bringInWords);
  const { xTowardsDeg, ySense, tiltSense } = conventions;
  const isClockwise = ySense === "clockwise";
  const yTowards = xTowardsDeg + (isClockwise ? 90 : -90);
  const isLower = tiltSense === "down-hole-end";
  return (
    <div className={styles["sketches"]}>
      <figure>
        <svg
          viewBox="0 0 160 160"
          role="img"
          aria-label={word("sketchDown", {
            x: xTowardsDeg,
            y: word(isClockwise ? "clockwiseOf" : "anticlockwiseOf"),
          })}
        >
          <circle className={styles["thin"]} cx={CENTRE} cy={CENTRE} r={44} />
          <path className={styles["solid"]} d={`M${CENTRE} 36 l-6 -11 h12 z`} />
          <text x={CENTRE - 12} y={22} textAnchor="end">
            {word("mark")}
          </text>
          <Arrow towards={xTowardsDeg} name="x" />
          <Arrow towards={yTowards} name="y" />
        </svg>
        <figcaption>{word("fromAbove")}</figcaption>
      </figure>
      <figure>
        <svg
          viewBox="0 0 160 160"
          role="img"
          aria-label={word("sketchSide", { end: word(isLower ? "lowerEnd" : "upperEnd") })}
        >
          <line className={styles["dashed"]} x1={CENTRE} y1={12} x2={CENTRE} y2={148} />
          <line
            className={styles["thick"]}
            x1={isLower ? CENTRE - 12 : CENTRE + 18}
            y1={20}
            x2={isLower ? CENTRE + 18 : CENTRE - 12}
            y2={138}
          />
          <line
            className={styles["axis"]}
            x1={CENTRE}
            y1={isLower ? 138 : 20}
            x2={132}
            y2={isLower ? 138 : 20}
          />
          <text x={136} y={isLower ? 143 : 25}>
            +
          </text>
          <path className={styles["solid"]} d="M28 146 l-5 -12 h10 z" />
          <line className={styles["axis"]} x1={28} y1={96} x2={28} y2={136} />
        </svg>
        <figcaption>{word("fromSide")}</figcaption>
      </figure>
    </div>
  );
}

function Arrow({ towards, name }: { readonly towards: number; readonly name: string }) {
  const tip = onCircle(towards, REACH);
  const [left, right] = [onCircle(towards - 7, REACH - 10), onCircle(towards + 7, REACH - 10)];
  const label = onCircle(towards + 16, REACH + 12);
  return (
    <>
      <line className={styles["axis"]} x1={CENTRE} y1={CENTRE} x2={tip.x} y2={tip.y} />
      <path
        className={styles["solid"]}
        d={`M${tip.x} ${tip.y} L${left.x} ${left.y} L${right.x} ${right.y} z`}
      />
      <text x={label.x - 4} y={label.y + 5}>
        +{name}
      </text>
    </>
  );
}
