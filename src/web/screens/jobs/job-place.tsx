import type { Issue, Result } from "#core";
import { sentenceOf } from "#text";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { NumberField } from "../../components/number-field.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { jobsWords } from "../../words/jobs/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { MapGrid } from "../../worker/desk-set-up.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import styles from "./jobs-screen.module.css";
import { crsOf, type TypedPlace } from "./typed-place.ts";

/** Where a job lies: its grid, its place on the globe, what its levels are counted from. */
export function JobPlace({
  place,
  onChange,
  trouble,
}: {
  readonly place: TypedPlace;
  readonly onChange: (place: TypedPlace) => void;
  /** about latitude and longitude */
  readonly trouble: string | undefined;
}) {
  const word = useWords(jobsWords);
  const language = useLanguage();
  const crs = crsOf(place);
  const grid = useAnswer<Result<MapGrid, readonly Issue[]>>((asked) => asked.grid(crs ?? "local"), [crs]);
  const isAsked = place.grid === "map" && crs !== undefined && grid !== undefined;
  const wrong =
    isAsked && !grid.ok ? grid.error.map((issue) => sentenceOf(issue, language)).join(" ") : undefined;
  const set = (part: Partial<TypedPlace>) => onChange({ ...place, ...part });
  return (
    <>
      <ChoiceBar
        label={word("newGrid")}
        value={place.grid}
        choices={[
          { id: "own", text: word("gridOwn") },
          { id: "map", text: word("gridMap") },
        ]}
        onChange={(id) => set({ grid: id })}
      />
      {place.grid === "own" ? null : (
        <>
          <TextField
            label={word("newEpsg")}
            hint={word("newEpsgHint")}
            value={place.epsg}
            onChange={(epsg) => set({ epsg })}
            trouble={wrong}
            autoComplete="off"
          />
          {isAsked && grid.ok ? <output>{word("gridFound", { name: grid.value.name })}</output> : null}
        </>
      )}
      <p className={styles["hint"]}>{word("newPlaceHint")}</p>
      <div className={styles["pair"]}>
        <NumberField
          label={word("newLatitude")}
          unit="°"
          text={place.latitude}
          onChange={(latitude) => set({ latitude })}
          min={-90}
          max={90}
        />
        <NumberField
          label={word("newLongitude")}
          unit="°"
          text={place.longitude}
          onChange={(longitude) => set({ longitude })}
          min={-180}
          max={180}
        />
      </div>
      {trouble === undefined ? null : (
        <p role="alert" className={styles["trouble"]}>
          {trouble}
        </p>
      )}
      <TextField
        label={word("newDatum")}
        hint={word("newDatumHint")}
        value={place.datum}
        onChange={(datum) => set({ datum })}
        autoComplete="off"
      />
    </>
  );
}
