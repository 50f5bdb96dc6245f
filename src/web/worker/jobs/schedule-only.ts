import { type FolderReader, folderFromFiles, parseJson } from "#formats";

const SETTINGS = "job.json";

/** The same folder without its runs: read at once, however many readings there are. */
export function scheduleOnly(folder: FolderReader): FolderReader {
  const bytes = folder.read(SETTINGS);
  const parsed = bytes === undefined ? undefined : parseJson(new TextDecoder().decode(bytes));
  if (!parsed?.ok || typeof parsed.value.value !== "object") return folder;
  const settings = JSON.stringify({ ...parsed.value.value, runs: [], calibrations: [] });
  const tables = folder.names.filter((name) => !name.includes("/") && name !== SETTINGS);
  return folderFromFiles(
    new Map<string, Uint8Array | string>([
      [SETTINGS, settings],
      ...tables.flatMap((name) => {
        const content = folder.read(name);
        return content === undefined ? [] : [[name, content] as const];
      }),
    ]),
  );
}
