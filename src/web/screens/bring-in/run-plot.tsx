import { formatNumber } from "#text";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { MappingView, PreviewLine } from "../../worker/desk-logger.ts";
import styles from "./bring-in.module.css";
import { pathOf, rangeOf } from "./plot-scale.ts";

const [LEFT, TOP, HIGH, PANEL, GAP] = [56, 34, 240, 150, 34];

/** The readings along the depth, as they will stand in the run: a panel for each component, depth downwards. */
export function RunPlot({ view }: { readonly view: MappingView }) {
  const word = useWords(bringInWords);
  const language = useLanguage();
  const { depthM, lines, taken } = view;
  if (depthM.length === 0 || lines.length === 0) return <p>{word("plotNone")}</p>;
  const [shallow, deep] = rangeOf(depthM);
  const toY = (depth: number) => TOP + ((depth - shallow) / (deep - shallow)) * HIGH;
  const name = (line: PreviewLine) => `${nameOf(line.name)} (${unitOf(line.name)})`;
  const width = LEFT + lines.length * (PANEL + GAP);
  const metres = (depth: number) => `${formatNumber(depth, 1, language)} m`;
  return (
    <svg
      className={styles["plot"]}
      viewBox={`0 0 ${width} ${TOP + HIGH + 30}`}
      role="img"
      aria-label={word("plotLabel", { names: lines.map(name).join(", "), count: taken })}
    >
      {[shallow, deep].map((depth) => (
        <text key={depth} x={LEFT - 6} y={toY(depth) + 4} textAnchor="end">
          {metres(depth)}
        </text>
      ))}
      <text x={LEFT - 6} y={TOP + HIGH / 2} textAnchor="end">
        {word("depthAxis")}
      </text>
      {lines.map((line, i) => {
        const left = LEFT + i * (PANEL + GAP);
        const [low, high] = rangeOf(line.values);
        const toX = (value: number) => left + ((value - low) / (high - low)) * PANEL;
        return (
          <g key={line.name}>
            <rect className={styles["thin"]} x={left} y={TOP} width={PANEL} height={HIGH} />
            {low < 0 && high > 0 ? (
              <line className={styles["dashed"]} x1={toX(0)} x2={toX(0)} y1={TOP} y2={TOP + HIGH} />
            ) : null}
            <path className={styles["curve"]} d={pathOf(line.values, depthM, toX, toY)} />
            <text x={left} y={TOP - 12}>
              {name(line)}
            </text>
            <text x={left} y={TOP + HIGH + 18}>
              {formatNumber(low, 2, language)}
            </text>
            <text x={left + PANEL} y={TOP + HIGH + 18} textAnchor="end">
              {formatNumber(high, 2, language)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

const nameOf = (column: string): string => column.replace(/_deg$/, "").replaceAll("_", " ");
const unitOf = (column: string): string => (column.endsWith("_deg") ? "°" : "g");
