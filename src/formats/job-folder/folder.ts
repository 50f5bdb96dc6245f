/** The files of a job folder, wherever they come from: a disk, an archive, a browser. Names use "/" and are relative to the folder. */
export interface FolderReader {
  readonly names: readonly string[];
  read(name: string): Uint8Array | undefined;
}

/** A folder held in memory; text is stored as UTF-8. */
export function folderFromFiles(files: ReadonlyMap<string, Uint8Array | string>): FolderReader {
  return {
    names: [...files.keys()],
    read(name) {
      const file = files.get(name);
      return typeof file === "string" ? new TextEncoder().encode(file) : file;
    },
  };
}

/** A path as job.json writes it, in the form of the folder's names: "./readings\\A.csv" is "readings/A.csv". */
export const tidyPath = (path: string): string => path.replaceAll("\\", "/").replace(/^(\.\/)+/, "");
