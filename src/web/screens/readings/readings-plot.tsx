import { DepthPlot, type DepthSeries } from "../../components/depth-plot.tsx";
import { readingsWords } from "../../words/readings/words.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ReadingSeries, RunReview } from "../../worker/desk-review.ts";
import { headOf, type ReadingsWord } from "./columns.ts";
import styles from "./readings-screen.module.css";

/** Both columns of a run against depth, every pass and face by itself. */
export function ReadingsPlot({
  review,
  standing,
}: {
  readonly review: RunReview;
  readonly standing: number;
}) {
  const word = useWords(readingsWords);
  const shared = useWords(reviewWords);
  const { columns, series, table, row } = review;
  if (columns === undefined || series.length === 0) return <p>{word("noPlot")}</p>;
  const panel = (of: "x" | "y") => {
    const { title, unit } = headOf(columns[of], word);
    return {
      id: of,
      title,
      unit: unit ?? word("asRecorded"),
      series: series.map(
        (pass): DepthSeries => ({
          id: `${pass.direction} ${pass.face} ${pass.repeat}`,
          name: passName(pass, word),
          points: pass.depthM.map((depth, i) => ({
            depth,
            value: pass[of][i] ?? null,
            isStruck: table.rows[pass.row[i]!]?.aside !== undefined,
            isCurrent: pass.row[i] === standing,
          })),
        }),
      ),
    };
  };
  const depthUnit =
    table.columns.includes("depth_m") || table.columns.includes("depth_mm") ? "m" : word("colCount");
  return (
    <>
      <DepthPlot
        label={word("plotLabel", { run: row.id, count: series.length })}
        panels={[panel("x"), panel("y")]}
        depthTitle={shared("depthAxis")}
        depthUnit={depthUnit}
      />
      <p className={styles["note"]}>{word("plotNote")}</p>
    </>
  );
}

function passName({ direction, face, repeat }: ReadingSeries, word: ReadingsWord): string {
  const way = word(direction === "down" ? "passDown" : "passUp");
  const name = face === 0 ? way : word("passFace", { direction: way, face });
  return repeat === 1 ? name : word("passRepeat", { name, repeat });
}
