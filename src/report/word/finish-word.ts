import { unzipSync, type Zippable, zipSync } from "fflate";
import { inReportFace } from "../fonts.ts";

const FIXED_TIME = new Date(1980, 0, 1);
const BLIP_EXTENSION = "{96DAC541-7B7A-43D3-8B79-37D633B846F1}";
const SVG_NAMESPACE = "http://schemas.microsoft.com/office/drawing/2016/SVG/main";
const IMAGE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/image";
const RELATIONSHIPS = "word/_rels/document.xml.rels";

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/**
 * What the template engine gets in place of a picture: some bytes that name it. The engine hashes every picture slowly, and would
 * hold all of them at once.
 */
export const placeholder = (index: number): Buffer =>
  Buffer.concat([SIGNATURE, Buffer.from(`toeline ${index}`)]);

function indexOf(part: Uint8Array): number | undefined {
  const named = part.length < 64 ? /^toeline (\d+)$/.exec(new TextDecoder().decode(part.subarray(8))) : null;
  return named === null ? undefined : Number(named[1]);
}

/**
 * What the template engine leaves open: the vector beside each picture, numbers of captions, ids that are unique, and an archive
 * that is the same each time.
 *
 * @param drawings SVG text, in the order of their placeholders.
 * @param draw makes the picture of a drawing.
 */
export function finishWord(
  docx: Uint8Array,
  drawings: readonly string[],
  draw: (svg: string) => Uint8Array,
): Uint8Array {
  const parts = unzipSync(docx);
  const text = (name: string) => new TextDecoder().decode(parts[name]);
  const put = (name: string, content: string) => {
    parts[name] = new TextEncoder().encode(content);
  };
  const { relationships, vectors } = addVectors(parts, text(RELATIONSHIPS), drawings, put, draw);
  put(RELATIONSHIPS, relationships);
  put("word/document.xml", numberCaptions(uniqueIds(linkVectors(text("word/document.xml"), vectors))));
  if (vectors.size > 0) put("[Content_Types].xml", withSvgType(text("[Content_Types].xml")));
  const packed: Zippable = {};
  for (const name of Object.keys(parts).sort(inPackageOrder))
    packed[name] = [parts[name]!, { level: /\.(?:png|jpe?g)$/.test(name) ? 0 : 6 }];
  return zipSync(packed, { mtime: FIXED_TIME });
}

/** Word looks for the list of types first. */
const inPackageOrder = (a: string, b: string): number =>
  Number(b === "[Content_Types].xml") - Number(a === "[Content_Types].xml") || (a < b ? -1 : 1);

/** One SVG part for each picture that was made from a drawing. @returns id of the SVG by the id of its picture. */
function addVectors(
  parts: Record<string, Uint8Array>,
  relationships: string,
  drawings: readonly string[],
  put: (name: string, content: string) => void,
  draw: (svg: string) => Uint8Array,
): { readonly relationships: string; readonly vectors: ReadonlyMap<string, string> } {
  const vectors = new Map<string, string>();
  const added: string[] = [];
  for (const [relationship] of relationships.matchAll(/<Relationship\b[^>]*>/g)) {
    const attribute = (name: string) => new RegExp(`\\b${name}="([^"]*)"`).exec(relationship)?.[1] ?? "";
    const [id, target] = [attribute("Id"), attribute("Target").replace(/^\/?(?:word\/)?/, "word/")];
    const part = attribute("Type") === IMAGE ? parts[target] : undefined;
    const svg = part && drawings[indexOf(part) ?? -1];
    if (svg === undefined) continue;
    parts[target] = draw(svg);
    const name = `drawing${added.length + 1}.svg`;
    put(`word/media/${name}`, inReportFace(svg));
    vectors.set(id, `${id}v`);
    added.push(`<Relationship Id="${id}v" Type="${IMAGE}" Target="media/${name}"/>`);
  }
  return {
    relationships: relationships.replace("</Relationships>", `${added.join("")}</Relationships>`),
    vectors,
  };
}

/** Word from 2016 on draws the vector; older programs the picture. */
function linkVectors(document: string, vectors: ReadonlyMap<string, string>): string {
  return document.replaceAll(
    /<a:blip\b([^>]*?)r:embed="([^"]+)"([^>]*?)(?:\/>|>([\s\S]*?)<\/a:blip>)/g,
    (whole, before: string, id: string, after: string) => {
      const vector = vectors.get(id);
      if (vector === undefined) return whole;
      return (
        `<a:blip${before}r:embed="${id}"${after}><a:extLst><a:ext uri="${BLIP_EXTENSION}">` +
        `<asvg:svgBlip xmlns:asvg="${SVG_NAMESPACE}" r:embed="${vector}"/></a:ext></a:extLst></a:blip>`
      );
    },
  );
}

const withSvgType = (types: string): string =>
  types.includes('Extension="svg"')
    ? types
    : types.replace(/<Default\b/, '<Default Extension="svg" ContentType="image/svg+xml"/><Default');

function uniqueIds(document: string): string {
  let id = 0;
  return document.replaceAll(/(<wp:docPr\b[^>]*?\bid=")[^"]*"/g, (_, start: string) => `${start}${++id}"`);
}

/** Captions carry their number as text as well, so that it is there before anybody lets the fields be updated. */
function numberCaptions(document: string): string {
  const counts = new Map<string, number>();
  return document.replaceAll(
    /(<w:instrText[^>]*>\s*SEQ (\w+)[\s\S]*?<w:fldChar w:fldCharType="separate"[^>]*\/>)([\s\S]*?)(<w:fldChar w:fldCharType="end")/g,
    (_, start: string, name: string, between: string, end: string) => {
      const count = (counts.get(name) ?? 0) + 1;
      counts.set(name, count);
      return `${start}<w:t>${count}</w:t>${between.replaceAll(/<w:t\b[^>]*>[^<]*<\/w:t>/g, "")}${end}`;
    },
  );
}
