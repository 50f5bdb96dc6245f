import { formatLevel, formatNumber, formatOffset } from "#text";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { AllowancePicture } from "../../worker/desk-set-up.ts";
import styles from "./allowances-screen.module.css";
import { drawingShape, SHEET } from "./drawing-shape.ts";

/** What a rule allows down the hole: how far to each side of the design axis, at each depth. */
export function AllowanceDrawing({ picture }: { readonly picture: AllowancePicture | undefined }) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  if (picture === undefined) return <p className={styles["soft"]}>{word("noPicture")}</p>;
  const shape = drawingShape(picture);
  const [top, bottom] = [picture.points[0]!, picture.points.at(-1)!];
  const offset = (metres: number) => `± ${formatOffset(metres, language)}`;
  const isOne = top === bottom;
  const times = formatNumber(shape.times, shape.times < 10 ? 1 : 0, language);
  const { width, height } = SHEET;
  return (
    <figure className={styles["drawing"]}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={
          isOne
            ? word("pictureOne", { allowed: offset(top.allowedM) })
            : word("pictureLabel", { top: offset(top.allowedM), bottom: offset(bottom.allowedM) })
        }
      >
        {shape.envelope === "" ? null : <path className={styles["envelope"]} d={shape.envelope} />}
        <path className={styles["axis"]} d={`M${shape.axis.x} ${shape.axis.top} V${shape.axis.bottom}`} />
        {shape.bars.map(({ x, y, width: long }) => (
          <path key={y} className={styles["bar"]} d={`M${x} ${y - 5} v10 m0 -5 h${long} m0 -5 v10`} />
        ))}
      </svg>
      <dl className={styles["limits"]}>
        {(isOne ? [top] : [top, bottom]).map(({ levelM, allowedM }) => (
          <div key={levelM}>
            <dt>{formatLevel(levelM, language)}</dt>
            <dd>{offset(allowedM)}</dd>
          </div>
        ))}
      </dl>
      <figcaption>
        {picture.element === undefined
          ? word("pictureImagined", { times })
          : word("pictureOf", { element: picture.element, times })}
      </figcaption>
    </figure>
  );
}
