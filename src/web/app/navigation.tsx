import { NavLink } from "react-router";
import { useLanguage } from "../preferences/use-preferences.ts";
import { screens } from "../screens/registry.ts";
import { GROUPS, type Group } from "../screens/screen.ts";
import { frameWords } from "../words/frame/words.ts";
import { useWords } from "../words/use-words.ts";
import styles from "./navigation.module.css";

const HEADS = {
  job: "groupJob",
  "set-up": "groupSetUp",
  measured: "groupMeasured",
  judged: "groupJudged",
  record: "groupRecord",
} as const satisfies Record<Group, keyof (typeof frameWords)["en"]>;

/** The screens of a job under their heads; in the drawer of a narrow window also the way out of the job. */
export function Navigation({
  job,
  isInDrawer = false,
}: {
  readonly job: string | undefined;
  readonly isInDrawer?: boolean;
}) {
  const word = useWords(frameWords);
  const language = useLanguage();
  return (
    <nav aria-label={word("navigation")} className={styles["navigation"]}>
      {job === undefined
        ? null
        : GROUPS.map((group) => ({
            group,
            within: screens.filter((screen) => screen.place === "job" && screen.group === group),
          }))
            .filter(({ within }) => within.length > 0)
            .map(({ group, within }) => (
              <section key={group} className={styles["group"]}>
                <h2 className={styles["head"]}>{word(HEADS[group])}</h2>
                <ul>
                  {within.map(({ id, path, title }) => (
                    <li key={id}>
                      <NavLink
                        end={path === ""}
                        to={`/jobs/${encodeURIComponent(job)}${path === "" ? "" : `/${path}`}`}
                        className={styles["link"]!}
                      >
                        {title[language]}
                      </NavLink>
                    </li>
                  ))}
                </ul>
              </section>
            ))}
      {isInDrawer ? (
        <ul className={styles["group"]}>
          <li>
            <NavLink to="/jobs" end className={styles["link"]!}>
              {word("jobs")}
            </NavLink>
          </li>
          <li>
            <NavLink to="/settings" className={styles["link"]!}>
              {word("settings")}
            </NavLink>
          </li>
        </ul>
      ) : null}
    </nav>
  );
}
