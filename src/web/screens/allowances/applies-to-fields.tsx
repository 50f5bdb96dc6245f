import { useState } from "react";
import { elementKind } from "#core";
import { CheckBoxes } from "../../components/check-boxes.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./allowances-screen.module.css";
import type { TypedRule } from "./typed-rule.ts";

const LABEL = { kind: "onlyKind", group: "onlyGroup", role: "onlyRole" } as const;

/** For which elements a rule is: by kind, group, role or name; nothing chosen is for all. */
export function AppliesToFields({
  words,
  typed,
  onChange,
}: {
  readonly words: Readonly<Record<string, readonly string[]>>;
  readonly typed: TypedRule;
  readonly onChange: (typed: TypedRule) => void;
}) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const [names, setNames] = useState((typed.appliesTo["element"] ?? []).join(", "));
  const set = (key: string, asked: readonly string[]) =>
    onChange({ ...typed, appliesTo: { ...typed.appliesTo, [key]: asked } });
  const textOf = (key: string, id: string) =>
    key === "kind" ? (elementKind(id)?.text[language].plural ?? id) : id;
  return (
    <>
      <h2 className={styles["part"]}>{word("forWhich")}</h2>
      <p className={styles["soft"]}>{word("forWhichHint")}</p>
      {(["kind", "group", "role"] as const).map((key) => {
        const asked = typed.appliesTo[key] ?? [];
        const all = [...new Set([...(words[key] ?? []), ...asked])];
        return all.length === 0 ? null : (
          <CheckBoxes
            key={key}
            label={word(LABEL[key])}
            chosen={asked}
            choices={all.map((id) => ({ id, text: textOf(key, id) }))}
            onChange={(ids) => set(key, ids)}
          />
        );
      })}
      <TextField
        label={word("onlyElement")}
        value={names}
        autoComplete="off"
        onChange={(text) => {
          setNames(text);
          set(
            "element",
            text
              .split(/[,;]/)
              .map((name) => name.trim())
              .filter(Boolean),
          );
        }}
      />
    </>
  );
}
