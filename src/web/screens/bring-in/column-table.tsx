import { type GivenSettings, QUANTITY_OF, ROLES, type Role, UNITS_OF, type UnitId } from "#formats";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { MappingView } from "../../worker/desk-logger.ts";
import styles from "./bring-in.module.css";
import { Sure } from "./setting.tsx";

const UNIT_SIGNS: Readonly<Partial<Record<UnitId, string>>> = {
  deg: "°",
  arcmin: "′",
  percent: "%",
  "m/s2": "m/s²",
  c: "°C",
  f: "°F",
  k: "K",
  ratio: "m/m",
};
const SHOWN = 12;

/** The file as it stands there, with what each column is on its head. */
export function ColumnTable({
  view,
  onChange,
}: {
  readonly view: MappingView;
  readonly onChange: (more: GivenSettings) => void;
}) {
  const word = useWords(bringInWords);
  const { columns } = view.settings;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a place that scrolls must be reached by the keyboard
    <section className={styles["scroll"]} tabIndex={0} aria-label={word("columns")}>
      <table className={styles["file"]}>
        <thead>
          <tr>
            <th scope="col">{word("line")}</th>
            {columns.map(({ heading, role, unit }, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns have no other name; headings may repeat
              <th scope="col" key={index}>
                <span className={styles["heading"]}>{heading}</span>
                <select
                  className={styles["select"]}
                  aria-label={word("roleOf", { column: heading })}
                  value={role}
                  onChange={(event) =>
                    onChange({ columns: { [index]: { role: event.target.value as Role } } })
                  }
                >
                  {ROLES.map((each) => (
                    <option key={each} value={each}>
                      {word(`role_${each}`)}
                    </option>
                  ))}
                </select>
                {QUANTITY_OF[role] === "plain" || (role === "time" && view.isDated) ? null : (
                  <select
                    className={styles["select"]}
                    aria-label={word("unitOf", { column: heading })}
                    value={unit}
                    onChange={(event) =>
                      onChange({ columns: { [index]: { unit: event.target.value as UnitId } } })
                    }
                  >
                    {UNITS_OF[QUANTITY_OF[role]].map((each) => (
                      <option key={each} value={each}>
                        {UNIT_SIGNS[each] ?? each}
                      </option>
                    ))}
                  </select>
                )}
                <Sure reason={view.reasons[`column.${index}.role`]} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.rows.slice(0, SHOWN).map(({ line, cells, isTaken }) => (
            <tr key={line} data-left={!isTaken || undefined}>
              <th scope="row">
                {line}
                {isTaken ? null : <small> {word("notTaken")}</small>}
              </th>
              {cells.map((cell, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <td key={index}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
