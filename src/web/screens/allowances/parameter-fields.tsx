import { type Choice, criterion, type Parameter, type TableParameter } from "#core";
import { Button } from "../../components/button.tsx";
import { ChoiceField } from "../../components/choice-field.tsx";
import { NumberField } from "../../components/number-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./allowances-screen.module.css";
import { shownUnit, type TypedRule } from "./typed-rule.ts";

interface FieldsProps {
  readonly typed: TypedRule;
  readonly onChange: (typed: TypedRule) => void;
}

/** Numbers, choices and tables of a rule, as its kind declares them. */
export function ParameterFields({ typed, onChange }: FieldsProps) {
  const word = useWords(allowancesWords);
  const kind = criterion(typed.kind);
  if (kind === undefined) return null;
  return (
    <>
      <h2 className={styles["part"]}>{word("numbers")}</h2>
      <Numbers
        parameters={kind.parameters}
        values={typed.numbers}
        onChange={(numbers) => onChange({ ...typed, numbers })}
      />
      {kind.tables.map((table) => (
        <Steps key={table.key} table={table} typed={typed} onChange={onChange} />
      ))}
      {kind.choices.length === 0 ? null : <h2 className={styles["part"]}>{word("choices")}</h2>}
      <div className={styles["cells"]}>
        {kind.choices.map((choice) => (
          <OneOf key={choice.key} choice={choice} typed={typed} onChange={onChange} />
        ))}
      </div>
    </>
  );
}

/** Declarations are written as parts of sentences. */
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

interface NumbersProps {
  readonly parameters: readonly Parameter[];
  readonly values: Readonly<Record<string, string>>;
  readonly onChange: (values: Readonly<Record<string, string>>) => void;
}

function Numbers({ parameters, values, onChange }: NumbersProps) {
  const language = useLanguage();
  return (
    <div className={styles["cells"]}>
      {parameters.map(({ key, unit, min, max, required, text }) => (
        <NumberField
          key={key}
          label={capital(text[language])}
          unit={shownUnit(unit)}
          text={values[key] ?? ""}
          onChange={(typed) => onChange({ ...values, [key]: typed })}
          min={min}
          max={max}
          isAsked={required && values[key] !== undefined}
        />
      ))}
    </div>
  );
}

function OneOf({ choice, typed, onChange }: FieldsProps & { readonly choice: Choice }) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const { key, values, text } = choice;
  const said = useChoiceWord();
  const usual = word("notSaid", { word: said(values[0] ?? "") });
  return (
    <ChoiceField
      label={capital(text[language])}
      value={typed.words[key] ?? ""}
      choices={[{ id: "", text: usual }, ...values.map((id) => ({ id, text: said(id) }))]}
      onChange={(id) => onChange({ ...typed, words: { ...typed.words, [key]: id } })}
    />
  );
}

/** The text of a choice; one that has none yet is shown as job.json names it. */
function useChoiceWord(): (value: string) => string {
  const word = useWords(allowancesWords);
  return (value) => {
    const key = `choice_${value}`;
    return key in allowancesWords.en ? word(key as keyof (typeof allowancesWords)["en"]) : value;
  };
}

/** A table of a rule: steps by diameter, length or rake. */
function Steps({ table, typed, onChange }: FieldsProps & { readonly table: TableParameter }) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const rows = typed.tables[table.key] ?? [];
  const set = (next: TypedRule["tables"][string]) =>
    onChange({ ...typed, tables: { ...typed.tables, [table.key]: next } });
  return (
    <fieldset className={styles["steps"]}>
      <legend>
        {word("table")}: {table.text[language]}
      </legend>
      {rows.map((row, i) => (
        // steps have no name of their own, only their order
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <fieldset key={i} className={styles["step"]}>
          <legend>{word("step", { row: i + 1 })}</legend>
          <Numbers
            parameters={table.columns}
            values={row}
            onChange={(values) => set(rows.map((each, at) => (at === i ? values : each)))}
          />
          <Button weight="quiet" onPress={() => set(rows.filter((_, at) => at !== i))}>
            {word("removeRow", { row: i + 1 })}
          </Button>
        </fieldset>
      ))}
      <Button onPress={() => set([...rows, {}])}>{word("addRow")}</Button>
    </fieldset>
  );
}
