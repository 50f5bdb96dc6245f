const WHY: Readonly<Record<string, string>> = {
  ENOENT: "it is not there",
  EACCES: "this user may not",
  EPERM: "this user may not",
  EROFS: "the disk can only be read",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk space of this user is used up",
  ENOTDIR: "a part of the path is a file, not a folder",
  EISDIR: "it is a folder, not a file",
  EMFILE: "too many files are open",
  ENAMETOOLONG: "the name is too long",
  EIO: "the disk does not answer",
};
const WRITES = new Set(["mkdir", "rename", "write", "unlink", "rmdir", "rm", "ftruncate"]);

/** What the operating system refused, in one sentence; undefined if the error is of another kind. */
export function systemErrorSentence(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("syscall" in error) || !("code" in error)) return undefined;
  const { code, syscall, path } = error as NodeJS.ErrnoException;
  const what = syscall !== undefined && WRITES.has(syscall) ? "written" : "read or written";
  return `${path ?? "The output"} cannot be ${what}: ${WHY[code ?? ""] ?? code ?? "no reason is given"}.`;
}
