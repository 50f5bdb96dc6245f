import { ChoiceBar } from "../../components/choice-bar.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { changePreferences } from "../../preferences/preferences.ts";
import { usePreferences } from "../../preferences/use-preferences.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./review.module.css";

/** Every key of the review, and the switch for those that are a single sign. */
export function KeyHelp({ isOpen, onClose }: { readonly isOpen: boolean; readonly onClose: () => void }) {
  const word = useWords(reviewWords);
  const { singleKeys } = usePreferences();
  const keys = [
    [word("arrows"), word("keyArrows")],
    [word("space"), word("keySpace")],
    [`Shift + ${word("space")}`, word("keyShiftSpace")],
    ["a", word("keyAccept")],
    ["[", word("keyPrevious")],
    ["]", word("keyNext")],
    ["/", word("keyFind")],
    ["?", word("keyHelp")],
    ["Enter", word("keyEnter")],
  ] as const;
  return (
    <Dialog title={word("keysTitle")} isOpen={isOpen} onClose={onClose}>
      <p>{word("keysLead")}</p>
      <dl className={styles["keys"]}>
        {keys.map(([key, does]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <ChoiceBar
        label={word("keysSwitch")}
        value={singleKeys ? "on" : "off"}
        choices={[
          { id: "on", text: word("keysOn") },
          { id: "off", text: word("keysOff") },
        ]}
        onChange={(choice) => changePreferences({ singleKeys: choice === "on" })}
      />
    </Dialog>
  );
}
