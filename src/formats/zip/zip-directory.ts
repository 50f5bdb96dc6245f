/** What the directory at the end of an archive says about one of its files. */
export interface ZipMember {
  readonly name: string;
  readonly isFolder: boolean;
  readonly isLink: boolean;
  readonly isEncrypted: boolean;
  /** 0 stored, 8 deflate */
  readonly method: number;
  readonly crc: number;
  readonly packedSize: number;
  readonly size: number;
  /** where the member begins in the archive, and where its bytes do; equal to each other if its own header is damaged */
  readonly start: number;
  readonly dataStart: number;
}

const END_SIGNATURE = 0x06054b50;
const MEMBER_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const END_LENGTH = 22;
const MEMBER_LENGTH = 46;
const LOCAL_LENGTH = 30;
/** a value that sends the reader to the 64-bit fields, which are not read here: such archives have over 4 GB or 65,534 files */
const IN_64_BITS = 0xffffffff;

/** Upper half of the attributes on Unix: the kind of file, and the kind "symbolic link". */
const FILE_KIND = 0xf000;
const LINK = 0xa000;

/**
 * The directory of an archive. Nothing is unpacked.
 *
 * @returns undefined if this is no whole zip archive that ends with its directory.
 *
 * Source: APPNOTE.TXT of the ZIP format, sections 4.3.7, 4.3.12 and 4.3.16 (from memory).
 */
export function readZipDirectory(bytes: Uint8Array): readonly ZipMember[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === undefined) return undefined;
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  if (start + view.getUint32(end + 12, true) > end) return undefined;
  const members: ZipMember[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + MEMBER_LENGTH > end || view.getUint32(at, true) !== MEMBER_SIGNATURE) return undefined;
    const nameLength = view.getUint16(at + 28, true);
    const length = MEMBER_LENGTH + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (at + length > end) return undefined;
    const member = memberAt(view, at, nameLength, start);
    if (member === undefined) return undefined;
    members.push(member);
    at += length;
  }
  return members;
}

function memberAt(view: DataView, at: number, nameLength: number, limit: number): ZipMember | undefined {
  const [packedSize, size] = [view.getUint32(at + 20, true), view.getUint32(at + 24, true)];
  const start = view.getUint32(at + 42, true);
  if ([packedSize, size, start].includes(IN_64_BITS)) return undefined;
  if (start + LOCAL_LENGTH > limit || view.getUint32(start, true) !== LOCAL_SIGNATURE) return undefined;
  const dataStart =
    start + LOCAL_LENGTH + view.getUint16(start + 26, true) + view.getUint16(start + 28, true);
  if (dataStart + packedSize > limit) return undefined;
  const attributes = view.getUint32(at + 38, true);
  const name = textAt(view, at + MEMBER_LENGTH, nameLength);
  // a reader that goes by the local headers must see the same names
  if (textAt(view, start + LOCAL_LENGTH, view.getUint16(start + 26, true)) !== name) return undefined;
  return {
    name,
    isFolder: name.endsWith("/"),
    isLink: ((attributes >>> 16) & FILE_KIND) === LINK,
    isEncrypted: (view.getUint16(at + 8, true) & 1) === 1,
    method: view.getUint16(at + 10, true),
    crc: view.getUint32(at + 16, true),
    packedSize,
    size,
    start,
    dataStart,
  };
}

/** The end record, which may have a comment behind it that reaches exactly to the end of the archive. */
function endOf(view: DataView): number | undefined {
  const lowest = Math.max(0, view.byteLength - END_LENGTH - 0xffff);
  for (let at = view.byteLength - END_LENGTH; at >= lowest; at--)
    if (view.getUint32(at, true) === END_SIGNATURE)
      return at + END_LENGTH + view.getUint16(at + 20, true) === view.byteLength ? at : undefined;
  return undefined;
}

const decoder = new TextDecoder();
const textAt = (view: DataView, at: number, length: number): string =>
  decoder.decode(new Uint8Array(view.buffer, view.byteOffset + at, length));
