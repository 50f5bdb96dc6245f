import { type FormEvent, useState } from "react";
import { formatNumber, sentenceOf } from "#text";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { jobsWords } from "../../words/jobs/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import { JobPlace } from "./job-place.tsx";
import styles from "./jobs-screen.module.css";
import { crsOf, degreesOf, isPaired, NO_PLACE, placeFields } from "./typed-place.ts";

export interface NewJobProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onMade: (job: string) => void;
}

/** Asks for a name and where the site is, and starts a job with it. The name alone is enough to begin. */
export function NewJob({ isOpen, onClose, onMade }: NewJobProps) {
  const word = useWords(jobsWords);
  const language = useLanguage();
  const [name, setName] = useState("");
  const [place, setPlace] = useState(NO_PLACE);
  const [trouble, setTrouble] = useState<string>();
  const [placeTrouble, setPlaceTrouble] = useState<string>();
  const outside = useOutside();
  const make = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = !isPaired(place) ? word("placeBoth") : await outside(place);
    setPlaceTrouble(wrong);
    setTrouble(name.trim() === "" ? word("newMissing") : undefined);
    if (name.trim() === "" || wrong !== undefined) return;
    const made = await desk().createJob(name.trim(), placeFields(place));
    if (made.ok) onMade(made.value);
    else
      setTrouble(
        word("createFailed", { why: made.error.map((issue) => sentenceOf(issue, language)).join(" ") }),
      );
  };
  return (
    <Dialog title={word("newTitle")} isOpen={isOpen} onClose={onClose}>
      <form className={styles["form"]} onSubmit={(event) => void make(event)}>
        <TextField
          label={word("newName")}
          hint={word("newHint")}
          value={name}
          onChange={setName}
          trouble={trouble}
          autoFocus
        />
        <JobPlace place={place} onChange={setPlace} trouble={placeTrouble} />
        <p>
          <Button weight="main" type="submit">
            {word("create")}
          </Button>
        </p>
      </form>
    </Dialog>
  );
}

/** Says what is wrong between the map grid and the place; undefined: nothing. */
function useOutside(): (place: typeof NO_PLACE) => Promise<string | undefined> {
  const word = useWords(jobsWords);
  const language = useLanguage();
  return async (place) => {
    const crs = crsOf(place);
    if (place.grid === "own") return undefined;
    if (crs === undefined) return word("epsgMissing");
    const grid = await desk().grid(crs);
    if (!grid.ok) return grid.error.map((issue) => sentenceOf(issue, language)).join(" ");
    const [latitude, longitude] = [degreesOf(place.latitude, 90), degreesOf(place.longitude, 180)];
    if (latitude === undefined || longitude === undefined) return undefined;
    const { name, southDeg, northDeg, westDeg, eastDeg } = grid.value;
    const crosses = westDeg > eastDeg;
    const isBetween = crosses
      ? longitude >= westDeg || longitude <= eastDeg
      : longitude >= westDeg && longitude <= eastDeg;
    if (latitude >= southDeg && latitude <= northDeg && isBetween) return undefined;
    const degrees = (value: number) => `${formatNumber(value, 2, language)}°`;
    return word("placeOutside", {
      name,
      south: degrees(southDeg),
      north: degrees(northDeg),
      west: degrees(westDeg),
      east: degrees(eastDeg),
    });
  };
}
