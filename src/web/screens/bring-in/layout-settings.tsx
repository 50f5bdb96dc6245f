import {
  DATE_ORDERS,
  ENCODINGS,
  type GivenSettings,
  type LoggerLayout,
  SEPARATORS,
  THOUSANDS,
} from "#formats";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { MappingView } from "../../worker/desk-logger.ts";
import styles from "./bring-in.module.css";
import { Setting } from "./setting.tsx";

type Key = keyof (typeof bringInWords)["en"];

const SEPARATOR_WORDS: Readonly<Record<LoggerLayout["separator"], Key>> = {
  ",": "sep_comma",
  ";": "sep_semicolon",
  "\t": "sep_tab",
  "|": "sep_bar",
  blanks: "sep_blanks",
  "wide-blanks": "sep_wide",
  sentences: "sep_sentences",
  "one-column": "sep_one",
  workbook: "workbook",
};
const THOUSANDS_WORDS: Readonly<Record<LoggerLayout["thousands"], Key>> = {
  none: "none",
  ",": "comma",
  ".": "point",
  blank: "blank",
  "'": "apostrophe",
};
const ENCODING_NAMES: Readonly<Record<LoggerLayout["encoding"], string | undefined>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16 LE",
  "utf-16be": "UTF-16 BE",
  "windows-1252": "Windows-1252",
  workbook: undefined,
};
const LINES = ["headingLine", "unitsLine", "firstLine", "lastLine"] as const;

/** Encoding, separator, signs and lines. */
export function LayoutSettings({
  view,
  onChange,
}: {
  readonly view: MappingView;
  readonly onChange: (more: GivenSettings) => void;
}) {
  const word = useWords(bringInWords);
  const { layout } = view.settings;
  const set = (name: keyof LoggerLayout) => (id: string) => onChange({ layout: { [name]: id } });
  const isSheet = layout.separator === "workbook";
  const reason = (name: string) => view.reasons[`layout.${name}`];
  const lines = Array.from({ length: 60 }, (_, line) => line);
  return (
    <div className={styles["settings"]}>
      <Setting
        label={word("encoding")}
        value={layout.encoding}
        reason={reason("encoding")}
        choices={ENCODINGS.filter((id) => (id === "workbook") === isSheet).map((id) => ({
          id,
          text: ENCODING_NAMES[id] ?? word("workbook"),
        }))}
        onChange={set("encoding")}
      />
      <Setting
        label={word("separator")}
        value={layout.separator}
        reason={reason("separator")}
        choices={SEPARATORS.filter((id) => (id === "workbook") === isSheet).map((id) => ({
          id,
          text: word(SEPARATOR_WORDS[id]),
        }))}
        onChange={set("separator")}
      />
      <Setting
        label={word("decimal")}
        value={layout.decimal}
        reason={reason("decimal")}
        choices={[
          { id: ".", text: word("point") },
          { id: ",", text: word("comma") },
        ]}
        onChange={set("decimal")}
      />
      <Setting
        label={word("thousands")}
        value={layout.thousands}
        reason={reason("thousands")}
        choices={THOUSANDS.map((id) => ({ id, text: word(THOUSANDS_WORDS[id]) }))}
        onChange={set("thousands")}
      />
      <Setting
        label={word("dateOrder")}
        value={layout.dateOrder}
        reason={reason("dateOrder")}
        choices={DATE_ORDERS.map((id) => ({ id, text: word(id) }))}
        onChange={set("dateOrder")}
      />
      {LINES.map((name) => (
        <Setting
          key={name}
          label={word(name)}
          value={String(layout[name])}
          reason={reason(name)}
          choices={[...new Set([...lines, layout[name]])].map((line) => ({
            id: String(line),
            text: line === 0 ? word("none") : String(line),
          }))}
          onChange={(id) => onChange({ layout: { [name]: Number(id) } })}
        />
      ))}
    </div>
  );
}
