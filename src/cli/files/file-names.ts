/**
 * A file name for each id: letters, digits, dot, dash and underscore stay, everything else becomes "_".
 *
 * Names that would fall together, also on a disk that does not tell capitals apart, get a number.
 */
export function fileNames(ids: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  const names = new Map<string, string>();
  for (const id of ids) {
    const plain = id.replaceAll(/[^\p{L}\p{N}._-]/gu, "_").replace(/^\.+/, "_") || "_";
    let name = plain;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${plain}-${n}`;
    taken.add(name.toLowerCase());
    names.set(id, name);
  }
  return names;
}
