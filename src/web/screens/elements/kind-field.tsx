import { elementKinds } from "#core";
import { ChoiceField } from "../../components/choice-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";

/** The kind of an element, out of those the program knows. */
export function KindField({
  value,
  onChange,
  mayBeLeft = false,
}: {
  readonly value: string;
  readonly onChange: (kind: string) => void;
  /** many are changed at once: the kind can stay as it is */
  readonly mayBeLeft?: boolean;
}) {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const kinds = elementKinds.map(({ id, text }) => ({ id, text: text[language].name }));
  const choices = mayBeLeft ? [{ id: "", text: word("kindAsIs") }, ...kinds] : kinds;
  return <ChoiceField label={word("kind")} value={value} choices={choices} onChange={onChange} />;
}
