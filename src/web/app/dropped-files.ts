/** Files that were dropped where no place for files is; the screen that brings files in takes them. */
const held: { files: readonly File[] } = { files: [] };
const listeners = new Set<() => void>();

export function offerFiles(files: readonly File[]): void {
  held.files = files;
  for (const listener of listeners) listener();
}

/** The files, once: whoever takes them has them. */
export function takeOfferedFiles(): readonly File[] {
  const { files } = held;
  held.files = [];
  return files;
}

/** @returns ends the listening. */
export function onFilesOffered(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
