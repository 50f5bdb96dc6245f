import { Checkbox } from "react-aria-components";
import styles from "./tick.module.css";

/** Something that is so or not, to be ticked. */
export function Tick({
  text,
  isTicked,
  onChange,
}: {
  readonly text: string;
  readonly isTicked: boolean;
  readonly onChange: (isTicked: boolean) => void;
}) {
  return (
    <Checkbox className={styles["tick"]!} isSelected={isTicked} onChange={onChange}>
      <span className={styles["box"]} aria-hidden="true">
        {isTicked ? "✓" : ""}
      </span>
      {text}
    </Checkbox>
  );
}
