import type { Verdict } from "#core";
import { verdictWords } from "#text";
import { VerdictShape } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { conflictsWords } from "../../words/conflicts/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ConflictCard, ConflictEffect } from "../../worker/desk-record.ts";
import styles from "./conflicts-screen.module.css";
import { letterOf } from "./letter-of.ts";

/** So many changed verdicts are written out; a rule of the whole job may change them all. */
const MOST_SHOWN = 8;

const isChanged = ({ verdicts: [first, ...others] }: ConflictEffect): boolean =>
  others.some((verdict) => verdict !== first);

/** What each value means for the verdicts. */
export function EffectList({ card: { effects, effectsLeftOut } }: { readonly card: ConflictCard }) {
  const word = useWords(conflictsWords);
  const changed = effects.filter(isChanged);
  const same = effects.filter((effect) => !isChanged(effect));
  return (
    <section className={styles["effects"]}>
      <h3>{word("effects")}</h3>
      {effects.length === 0 ? <p>{word("effectNone")}</p> : null}
      <ul>
        {changed.slice(0, MOST_SHOWN).map((effect) => (
          <Change key={effect.element} effect={effect} />
        ))}
        {changed.length > MOST_SHOWN ? (
          <li>{word("effectMore", { count: changed.length - MOST_SHOWN })}</li>
        ) : null}
        {same.length > 0 ? (
          <li>{word("effectSame", { count: same.length, element: same[0]?.element ?? "" })}</li>
        ) : null}
        {effectsLeftOut > 0 ? <li>{word("effectLeftOut", { count: effectsLeftOut })}</li> : null}
      </ul>
    </section>
  );
}

function Change({ effect: { element, verdicts } }: { readonly effect: ConflictEffect }) {
  const word = useWords(conflictsWords);
  const language = useLanguage();
  const said = (verdict: Verdict | undefined) =>
    verdict === undefined ? word("noElement") : verdictWords[language][verdict];
  const [from, to] = verdicts;
  const list = verdicts
    .map((verdict, i) => word("effectOfLetter", { verdict: said(verdict), letter: letterOf(i) }))
    .join(", ");
  return (
    <li className={styles["change"]}>
      <span className={styles["shapes"]}>
        {verdicts.map((verdict, i) =>
          verdict === undefined ? null : <VerdictShape key={letterOf(i)} verdict={verdict} />,
        )}
      </span>
      {verdicts.length === 2
        ? word("effectOne", { element, from: said(from), to: said(to) })
        : word("effectMany", { element, list })}
    </li>
  );
}
