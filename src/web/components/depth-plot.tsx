import { useId, useLayoutEffect, useRef, useState } from "react";
import { formatNumber } from "#text";
import { useLanguage } from "../preferences/use-preferences.ts";
import styles from "./depth-plot.module.css";
import { type PlotScale, plotScale } from "./plot-scale.ts";

/** One point; null: nothing was read there, and no line is drawn across. */
export interface DepthPoint {
  readonly depth: number;
  readonly value: number | null;
  /** taken out: drawn open and crossed, and passed by the line */
  readonly isStruck?: boolean;
  /** the one that the keyboard stands on in the table beside it */
  readonly isCurrent?: boolean;
}

export interface DepthSeries {
  readonly id: string;
  readonly name: string;
  readonly points: readonly DepthPoint[];
}

export interface DepthPanel {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly series: readonly DepthSeries[];
  /** what lies at either end, in words: "towards +x" */
  readonly ends?: readonly [string, string];
}

export interface DepthPlotProps {
  /** what it shows, for those who do not see it; the numbers stand in a table beside it */
  readonly label: string;
  readonly panels: readonly DepthPanel[];
  readonly depthTitle: string;
  readonly depthUnit: string;
  /** levels rise upwards, depths grow downwards */
  readonly isLevel?: boolean;
}

const HEIGHT = 460;
const TOP = 46;
const BOTTOM = 34;
const LEFT = 52;
const BETWEEN = 22;
const NARROWEST = 300;
/** so many series are told apart by dash and mark */
const LINES = 4;

/**
 * Values against depth, panels side by side on one depth axis that runs downwards. Every reading is a mark, gaps stay gaps. Series
 * are told apart by dash and mark, never by colour alone.
 */
export function DepthPlot({ label, panels, depthTitle, depthUnit, isLevel = false }: DepthPlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = Math.max(NARROWEST, useWidth(place));
  const language = useLanguage();
  const title = useId();
  const depths = panels.flatMap(({ series }) => series.flatMap(({ points }) => points.map((p) => p.depth)));
  const [top, bottom] = [TOP, HEIGHT - BOTTOM];
  const depth = isLevel ? plotScale(depths, bottom, top, 9) : plotScale(depths, top, bottom, 9);
  const each = (width - LEFT - BETWEEN * panels.length) / Math.max(1, panels.length);
  const series = panels[0]?.series ?? [];
  return (
    <figure className={styles["plot"]}>
      <div ref={place} className={styles["place"]}>
        <svg
          viewBox={`0 0 ${width} ${HEIGHT}`}
          role="img"
          aria-labelledby={title}
          className={styles["drawing"]}
        >
          <title id={title}>{label}</title>
          {depth.ticks.map((tick) => (
            <g key={tick}>
              <line
                className={styles["grid"]}
                x1={LEFT}
                x2={width}
                y1={depth.place(tick)}
                y2={depth.place(tick)}
              />
              <text className={styles["tick"]} x={LEFT - 6} y={depth.place(tick) + 4} textAnchor="end">
                {formatNumber(tick, depth.decimals, language, { signed: isLevel })}
              </text>
            </g>
          ))}
          <text className={styles["axis"]} x={0} y={16}>
            {depthTitle} ({depthUnit})
          </text>
          {panels.map((panel, i) => (
            <Panel
              key={panel.id}
              panel={panel}
              depth={depth}
              left={LEFT + i * (each + BETWEEN)}
              width={each}
            />
          ))}
        </svg>
      </div>
      {series.length < 2 ? null : (
        <ul className={styles["key"]}>
          {series.map(({ id, name }, i) => (
            <li key={id}>
              <svg viewBox="0 0 40 12" aria-hidden="true" className={styles["sample"]}>
                <line className={styles["line"]} data-line={i % LINES} x1={0} x2={40} y1={6} y2={6} />
                <Mark x={20} y={6} kind={i % LINES} />
              </svg>
              {name}
            </li>
          ))}
        </ul>
      )}
    </figure>
  );
}

interface PanelProps {
  readonly panel: DepthPanel;
  readonly depth: PlotScale;
  readonly left: number;
  readonly width: number;
}

function Panel({ panel: { title, unit, series, ends }, depth, left, width }: PanelProps) {
  const language = useLanguage();
  const values = series.flatMap(({ points }) =>
    points.flatMap(({ value }) => (value === null ? [] : [value])),
  );
  const scale = plotScale(values, left + 6, left + width - 6, Math.max(2, Math.floor(width / 56)));
  const bottom = HEIGHT - BOTTOM;
  return (
    <g>
      <text className={styles["title"]} x={left} y={34}>
        {title} ({unit})
      </text>
      {scale.ticks.map((tick) => (
        <g key={tick}>
          <line
            className={styles[tick === 0 ? "zero" : "grid"]}
            x1={scale.place(tick)}
            x2={scale.place(tick)}
            y1={TOP}
            y2={bottom}
          />
          <text className={styles["tick"]} x={scale.place(tick)} y={bottom + 16} textAnchor="middle">
            {formatNumber(tick, scale.decimals, language)}
          </text>
        </g>
      ))}
      {ends === undefined ? null : (
        <>
          <text className={styles["tick"]} x={left} y={bottom + 30}>
            {ends[0]}
          </text>
          <text className={styles["tick"]} x={left + width} y={bottom + 30} textAnchor="end">
            {ends[1]}
          </text>
        </>
      )}
      {series.map(({ id, points }, i) => (
        <g key={id}>
          <path className={styles["line"]} data-line={i % LINES} d={pathOf(points, scale, depth)} />
          {points.map(({ depth: at, value, isStruck = false, isCurrent = false }, k) =>
            value === null ? null : (
              <g
                // points have no name of their own, and keep their order
                // biome-ignore lint/suspicious/noArrayIndexKey: see above
                key={k}
              >
                {isCurrent ? (
                  <circle className={styles["current"]} cx={scale.place(value)} cy={depth.place(at)} r={9} />
                ) : null}
                {isStruck ? (
                  <Struck x={scale.place(value)} y={depth.place(at)} />
                ) : (
                  <Mark x={scale.place(value)} y={depth.place(at)} kind={i % LINES} />
                )}
              </g>
            ),
          )}
        </g>
      ))}
    </g>
  );
}

/** Line through the points that count, broken where nothing was read. */
function pathOf(points: readonly DepthPoint[], scale: PlotScale, depth: PlotScale): string {
  let isDown = false;
  return points
    .filter(({ isStruck }) => isStruck !== true)
    .map(({ depth: at, value }) => {
      if (value === null) {
        isDown = false;
        return "";
      }
      const to = `${isDown ? "L" : "M"}${scale.place(value).toFixed(1)} ${depth.place(at).toFixed(1)}`;
      isDown = true;
      return to;
    })
    .join("");
}

interface MarkProps {
  readonly x: number;
  readonly y: number;
}

function Mark({ x, y, kind }: MarkProps & { readonly kind: number }) {
  const className = styles["mark"];
  if (kind === 1) return <circle className={className} data-open cx={x} cy={y} r={2.8} />;
  if (kind === 2) return <rect className={className} x={x - 2.4} y={y - 2.4} width={4.8} height={4.8} />;
  if (kind === 3)
    return <path className={className} data-open d={`M${x} ${y - 3.6}l3.6 3.6l-3.6 3.6l-3.6 -3.6z`} />;
  return <circle className={className} cx={x} cy={y} r={2.4} />;
}

const Struck = ({ x, y }: MarkProps) => (
  <path className={styles["struck"]} d={`M${x - 4} ${y - 4}l8 8m0 -8l-8 8`} />
);

/** Width of a place on the screen, as it is now. */
function useWidth(place: { readonly current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => setWidth(element.clientWidth));
    watch.observe(element);
    setWidth(element.clientWidth);
    return () => watch.disconnect();
  }, [place]);
  return width;
}
