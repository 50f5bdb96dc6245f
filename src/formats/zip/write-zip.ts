import { deflateSync, type Zippable, zipSync } from "fflate";

/** Every file carries the first time that the format can say, read in local time: the archive is the same wherever it is made. */
const FIXED_TIME = new Date(1980, 0, 1);
/** What deflates to less than this part of itself is stored as it is, so that no reader takes the archive for a bomb. */
const SMALLEST_PART = 1 / 50;

/**
 * A zip archive that depends on nothing but its files: names in order, one fixed time, one way to pack.
 *
 * @param files content by name, with "/" between folders.
 * @param isPacked whether the content of a name is packed already, as in a photo: it is stored without another try.
 */
export function writeZip(
  files: ReadonlyMap<string, Uint8Array>,
  isPacked: (name: string) => boolean = () => false,
): Uint8Array<ArrayBuffer> {
  const zippable: Zippable = Object.create(null) as Zippable;
  for (const [name, content] of [...files].sort(([a], [b]) => (a < b ? -1 : 1)))
    zippable[name] = [content, { level: isPacked(name) || swells(content) ? 0 : 6 }];
  return zipSync(zippable, { mtime: FIXED_TIME });
}

const swells = (content: Uint8Array): boolean =>
  deflateSync(content, { level: 6 }).length < content.length * SMALLEST_PART;
