import type { ReactNode } from "react";
import { Tabs as AriaTabs, Tab, TabList, TabPanel } from "react-aria-components";
import styles from "./tabs.module.css";

export interface TabsProps {
  readonly label: string;
  readonly tabs: readonly { readonly id: string; readonly title: string; readonly content: ReactNode }[];
  readonly selected?: string;
  readonly onSelect?: (id: string) => void;
}

/** Parts of one screen of which one is seen. Only the seen one is made. */
export function Tabs({ label, tabs, selected, onSelect }: TabsProps) {
  return (
    <AriaTabs
      className={styles["tabs"]!}
      {...(selected === undefined ? {} : { selectedKey: selected })}
      onSelectionChange={(key) => onSelect?.(String(key))}
    >
      <TabList className={styles["list"]!} aria-label={label}>
        {tabs.map(({ id, title }) => (
          <Tab key={id} id={id} className={styles["tab"]!}>
            {title}
          </Tab>
        ))}
      </TabList>
      {tabs.map(({ id, content }) => (
        <TabPanel key={id} id={id} className={styles["panel"]!}>
          {content}
        </TabPanel>
      ))}
    </AriaTabs>
  );
}
