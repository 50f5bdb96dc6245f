const OWN_FILES = ["job.json", "elements.csv", "elements.xlsx", "tubes.csv"];

/**
 * Whether a name from a log may be a file of a folder: inside of it, none of its own files, and a name that every disk takes.
 * Entries come from other devices, so that a name is never trusted.
 */
export function isFileName(name: string): boolean {
  const parts = name.split("/");
  const isPlain = parts.every((part) => /^[^<>:"|?*\\\p{Cc}]+$/u.test(part) && !/^\.|[. ]$/.test(part));
  return isPlain && name.length <= 200 && !OWN_FILES.includes(name.toLowerCase());
}

/** A name for the readings of a run that brings none along. */
export function readingsName(run: string, isTaken: (name: string) => boolean): string {
  const plain = run.replaceAll(/[^\p{L}\p{N}_-]/gu, "_").slice(0, 80) || "_";
  let name = `readings/${plain}.csv`;
  for (let n = 2; isTaken(name); n++) name = `readings/${plain}-${n}.csv`;
  return name;
}
