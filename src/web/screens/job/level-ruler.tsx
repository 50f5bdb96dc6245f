import { Slider, SliderThumb, SliderTrack } from "react-aria-components";
import { formatLevel } from "#text";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { jobWords } from "../../words/job/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./level-ruler.module.css";
import type { LevelRange } from "./plan/level-range.ts";

export interface LevelRulerProps {
  readonly range: LevelRange;
  readonly levelM: number;
  readonly onChange: (levelM: number) => void;
}

/** A staff beside the plan: the mark on it is the level at which the plan is drawn. */
export function LevelRuler({ range, levelM, onChange }: LevelRulerProps) {
  const word = useWords(jobWords);
  const language = useLanguage();
  const span = range.topM - range.bottomM;
  const share = (level: number) => `${(100 * (level - range.bottomM)) / span}%`;
  return (
    <Slider
      className={styles["ruler"]!}
      orientation="vertical"
      aria-label={word("level")}
      minValue={range.bottomM}
      maxValue={range.topM}
      step={range.stepM}
      value={levelM}
      onChange={(value) => {
        if (typeof value === "number") onChange(value);
      }}
      formatOptions={{ style: "unit", unit: "meter", minimumFractionDigits: 1 }}
    >
      <output className={styles["value"]}>{formatLevel(levelM, language).replace(/0 m$/, " m")}</output>
      <SliderTrack className={styles["track"]!}>
        {range.ticks.map(({ levelM: tick, isLong }) => (
          <span
            key={tick}
            className={styles["tick"]}
            data-long={isLong || undefined}
            style={{ bottom: share(tick) }}
          >
            {isLong ? formatLevel(tick, language).replace(/[.,]\d+ m$/, "") : null}
          </span>
        ))}
        <SliderThumb className={styles["thumb"]!} />
      </SliderTrack>
    </Slider>
  );
}
