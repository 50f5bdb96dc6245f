import { formatNumber } from "#text";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";
import type { ProposedElement } from "../../worker/desk-set-up.ts";
import styles from "./elements-screen.module.css";
import { planPoints } from "./plan-points.ts";

const WIDTH = 640;
const HEIGHT = 260;
/** Names stand beside the points as long as they can be read. */
const NAMED = 40;

/** Where the lines are, among what is there already: exchanged coordinates are seen at once. */
export function ProposalPlan({
  elements,
  others,
}: {
  readonly elements: readonly ProposedElement[];
  readonly others: readonly ElementRow[];
}) {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const ids = new Set(elements.map(({ row }) => row.id));
  const held = others.filter(({ id }) => !ids.has(id));
  const rows = [...held, ...elements.map(({ row }) => row)];
  const { points, bar } = planPoints(rows, WIDTH, HEIGHT);
  const range = (of: (row: ElementRow) => number, pick: (a: number, b: number) => number) =>
    `${formatNumber(
      elements.map(({ row }) => of(row)).reduce((a, b) => pick(a, b)),
      2,
      language,
    )} m`;
  return (
    <figure className={styles["figure"]}>
      <h3>{word("planTitle")}</h3>
      <svg
        className={styles["plan"]}
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={word("planLabel")}
      >
        {points.map(({ x, y }, i) => {
          const isHeld = i < held.length;
          const row = rows[i]!;
          return (
            <g key={`${isHeld ? "held" : "new"} ${row.id}`}>
              <circle className={styles[isHeld ? "held" : "fresh"]} cx={x} cy={y} r={isHeld ? 3.5 : 4} />
              {!isHeld && elements.length <= NAMED ? (
                <text className={styles["name"]} x={x + 6} y={y - 5}>
                  {row.id}
                </text>
              ) : null}
            </g>
          );
        })}
        <path className={styles["line"]} d={`M${WIDTH - 20} 44 V16 l-5 9 m5 -9 l5 9`} />
        <text className={styles["mark"]} x={WIDTH - 20} y={60} textAnchor="middle">
          {word("north")}
        </text>
        <path className={styles["line"]} d={`M12 ${HEIGHT - 18} v6 h${bar.length} v-6`} />
        <text className={styles["mark"]} x={18 + bar.length} y={HEIGHT - 12}>
          {formatNumber(bar.metres, bar.metres < 1 ? 2 : 0, language)} m
        </text>
      </svg>
      <figcaption>
        {word("planText", {
          west: range(({ eastM }) => eastM, Math.min),
          east: range(({ eastM }) => eastM, Math.max),
          south: range(({ northM }) => northM, Math.min),
          north: range(({ northM }) => northM, Math.max),
        })}
      </figcaption>
    </figure>
  );
}
