import type { InputFile } from "./desk.ts";

/** Files that were dropped or chosen, read for the worker; their names carry their folders where the browser says them. */
export const readFiles = (files: readonly File[]): Promise<InputFile[]> =>
  Promise.all(
    files.map(async (file) => ({
      name: file.webkitRelativePath || file.name,
      bytes: new Uint8Array(await file.arrayBuffer()),
    })),
  );
