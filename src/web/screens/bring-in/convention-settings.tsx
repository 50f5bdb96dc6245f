import { CONVENTION_CHOICES, type ConventionName, type GivenSettings } from "#formats";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { MappingView } from "../../worker/desk-logger.ts";
import { AxesSketch } from "./axes-sketch.tsx";
import styles from "./bring-in.module.css";
import { Setting } from "./setting.tsx";

type Key = keyof (typeof bringInWords)["en"];

/** Axes and signs, with a drawing that changes with them. */
export function ConventionSettings({
  view,
  onChange,
}: {
  readonly view: MappingView;
  readonly onChange: (more: GivenSettings) => void;
}) {
  const word = useWords(bringInWords);
  const { conventions } = view.settings;
  const choices = (name: ConventionName) =>
    CONVENTION_CHOICES[name].map((id) => ({ id: String(id), text: word(`${name}_${id}` as Key) }));
  const set = (name: ConventionName) => (id: string) => {
    const chosen = CONVENTION_CHOICES[name].find((each) => String(each) === id);
    onChange({ conventions: { [name]: chosen } });
  };
  return (
    <>
      <p>{word("conventionsText")}</p>
      <div className={styles["beside"]}>
        {view.conventions.includes("xTowardsDeg") ? <AxesSketch conventions={conventions} /> : null}
        <div className={styles["settings"]}>
          {view.conventions.map((name) => (
            <Setting
              key={name}
              label={word(name)}
              value={String(conventions[name])}
              reason={view.reasons[`conventions.${name}`]}
              choices={choices(name)}
              onChange={set(name)}
            />
          ))}
        </div>
      </div>
    </>
  );
}
