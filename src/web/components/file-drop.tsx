import { type ReactNode, useState } from "react";
import { DropZone, FileTrigger, Text } from "react-aria-components";
import { Button } from "./button.tsx";
import styles from "./file-drop.module.css";

export interface FileDropProps {
  /** what may be dropped, in a sentence */
  readonly label: string;
  /** on the button that opens the list of files */
  readonly choose: string;
  /** endings such as ".zip", ".csv" */
  readonly endings?: readonly string[];
  readonly onFiles: (files: readonly File[]) => void;
  readonly children?: ReactNode;
}

/** A place for files: dropped, chosen or pasted. A dropped folder gives all of its files, with their paths as names. */
export function FileDrop({ label, choose, endings, onFiles, children }: FileDropProps) {
  const [isBusy, setBusy] = useState(false);
  const take = async (gather: Promise<readonly File[]>) => {
    setBusy(true);
    const files = await gather;
    setBusy(false);
    if (files.length > 0) onFiles(files);
  };
  return (
    <DropZone
      className={styles["zone"]!}
      onDrop={({ items }) =>
        void take(Promise.all(items.map((item) => filesOf(item))).then((all) => all.flat()))
      }
    >
      <Text slot="label">{label}</Text>
      {children}
      <FileTrigger
        allowsMultiple
        {...(endings === undefined ? {} : { acceptedFileTypes: endings })}
        onSelect={(list) => void take(Promise.resolve([...(list ?? [])]))}
      >
        <Button isPending={isBusy}>{choose}</Button>
      </FileTrigger>
    </DropZone>
  );
}

type Dropped = Parameters<NonNullable<React.ComponentProps<typeof DropZone>["onDrop"]>>[0]["items"][number];

async function filesOf(item: Dropped, path = ""): Promise<readonly File[]> {
  if (item.kind === "file") {
    const file = await item.getFile();
    return [new File([file], `${path}${item.name}`, { type: file.type })];
  }
  if (item.kind !== "directory") return [];
  const inside: File[] = [];
  for await (const entry of item.getEntries())
    inside.push(...(await filesOf(entry as Dropped, `${path}${item.name}/`)));
  return inside;
}
