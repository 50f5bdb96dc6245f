import { fail, type Issue, ok, type Result } from "#core";
import { readZip } from "#formats";

/** What a template may cost; honest ones have some hundred kilobytes. */
export const TEMPLATE_LIMITS = { bytes: 40_000_000, swelling: 100, files: 500 } as const;
const LARGEST_FILE = 20_000_000;

/** Fields that read files or data of others, or start something. Others show what is in the document itself. */
const FIELDS =
  /\b(INCLUDEPICTURE|INCLUDETEXT|INCLUDE|IMPORT|LINK|DDE|DDEAUTO|DATABASE|EMBED|RD|MACROBUTTON|GOTOBUTTON|AUTOTEXT|AUTOTEXTLIST|MERGEFIELD|PRINT)\b/i;
/** Parts that are programs or foreign documents, by their names. */
const ACTIVE_PARTS: readonly (readonly [RegExp, string])[] = [
  [/vbaProject|vbaData/i, "macros"],
  [/activeX/i, "ActiveX controls"],
  [/embeddings\//i, "embedded objects"],
  [/\.(?:bin|exe|dll|js|vbs|ps1|bat|cmd|html?|mht|rtf|docm|dotm)$/i, "a program or a foreign document"],
  [/^(?:userCustomization|customUI)\//i, "changes of the user interface"],
];
const ACTIVE_MARKUP: readonly (readonly [RegExp, string])[] = [
  [/<w:altChunk\b/i, "a foreign document (altChunk)"],
  [/<w:object\b|<o:OLEObject\b/i, "an embedded object"],
  [/<w:control\b/i, "a control"],
  [/<w:attachedTemplate\b/i, "an attached template"],
  [/<w:subDoc\b/i, "a sub-document"],
  [/<w:mailMerge\b/i, "a mail merge"],
  [/<w:(?:legacyMacro|macroName|entryMacro|exitMacro)\b/i, "macros"],
  [/<w:(?:saveThroughXslt|externalData|frame\b[^>]*r:id)/i, "a link to outside data"],
];
/** Relationships that a template may have to places outside: links that a reader clicks on, to the web or to mail. */
const HARMLESS_LINK = /\/hyperlink$/;
const HARMLESS_TARGET = /^(?:https?:\/\/|mailto:)/i;

/**
 * Whether a Word template from outside is only text, layout and tags. Nothing in it is run or fetched to find out.
 *
 * @param name of the file, for findings.
 * @returns its parts, or every reason to refuse it.
 *
 * Errors: report.template-too-large, report.template-part-missing, report.template-active,
 *   report.template-outside, report.template-field, report.template-xml, and those of readZip.
 */
export function checkTemplate(
  bytes: Uint8Array,
  name: string,
): Result<ReadonlyMap<string, Uint8Array>, readonly Issue[]> {
  const issues: Issue[] = [];
  const refuse = (code: string, file: string, values: Issue["values"] = {}) => {
    issues.push({ code, severity: "error", place: { file }, values });
  };
  if (bytes.length > LARGEST_FILE) {
    refuse("report.template-too-large", name, { found: bytes.length, expected: LARGEST_FILE });
    return fail(issues);
  }
  const unpacked = readZip(bytes, name, TEMPLATE_LIMITS);
  if (!unpacked.ok) return unpacked;
  const parts = unpacked.value;
  for (const part of ["[Content_Types].xml", "word/document.xml"])
    if (!parts.has(part)) refuse("report.template-part-missing", name, { found: part });
  for (const [part, content] of parts) {
    for (const [pattern, what] of ACTIVE_PARTS)
      if (pattern.test(part)) refuse("report.template-active", part, { found: what });
    if (/\.(?:xml|rels)$/i.test(part)) checkMarkup(part, content, refuse);
  }
  return issues.length > 0 ? fail(issues) : ok(parts);
}

type Refuse = (code: string, file: string, values?: Issue["values"]) => void;

function checkMarkup(part: string, content: Uint8Array, refuse: Refuse): void {
  // other encodings could hide what is looked for
  const text = new TextDecoder("utf-8").decode(content);
  const isUtf8 = !text.includes("\u0000") && !/^<\?xml[^>]*encoding=["'](?!utf-8)/i.test(text);
  if (!isUtf8 || /<!DOCTYPE|<!ENTITY/i.test(text)) {
    refuse("report.template-xml", part, { found: part });
    return;
  }
  for (const [pattern, what] of ACTIVE_MARKUP)
    if (pattern.test(text)) refuse("report.template-active", part, { found: what });
  if (part.endsWith(".rels")) checkRelationships(part, text, refuse);
  if (part === "[Content_Types].xml" && /macroEnabled|vbaProject|activeX|oleObject/i.test(text))
    refuse("report.template-active", part, { found: "macros" });
  checkFields(part, text, refuse);
}

const unescapeXml = (text: string): string =>
  text
    .replaceAll(/&#x([0-9a-f]+);/gi, (_, hex: string) =>
      String.fromCodePoint(Number.parseInt(hex, 16) % 0x110000),
    )
    .replaceAll(/&#(\d+);/g, (_, decimal: string) => String.fromCodePoint(Number(decimal) % 0x110000))
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&");

function checkRelationships(part: string, text: string, refuse: Refuse): void {
  for (const [relationship] of text.matchAll(/<(?:\w+:)?Relationship\b[^>]*>/g)) {
    const attribute = (name: string) =>
      unescapeXml(new RegExp(`\\b${name}\\s*=\\s*["']([^"']*)["']`).exec(relationship)?.[1] ?? "");
    const [type, target, mode] = [attribute("Type"), attribute("Target"), attribute("TargetMode")];
    if (/attachedTemplate|aFChunk|oleObject|frame$|subDocument|mailMerge|externalLink/i.test(type))
      refuse("report.template-active", part, { found: type.slice(type.lastIndexOf("/") + 1) });
    const isOutside = mode.toLowerCase() === "external" || /^(?:[a-z][a-z0-9+.-]*:|\\\\|\/\/)/i.test(target);
    if (isOutside && !(HARMLESS_LINK.test(type) && HARMLESS_TARGET.test(target)))
      refuse("report.template-outside", part, { found: target.slice(0, 200) });
  }
}

/** Codes of fields may be cut into runs: the pieces of each paragraph are looked at together. */
function checkFields(part: string, text: string, refuse: Refuse): void {
  const simple = [...text.matchAll(/<w:fldSimple\b[^>]*w:instr\s*=\s*(?:"([^"]*)"|'([^']*)')/g)].map(
    (match) => match[1] ?? match[2] ?? "",
  );
  const pieces = [
    ...text.matchAll(/<w:instrText\b[^>]*>([^<]*)<|<w:fldChar\b[^>]*w:fldCharType\s*=\s*["'](\w+)["']/g),
  ];
  let code = "";
  const complex: string[] = [];
  for (const [, piece, kind] of pieces) {
    if (piece !== undefined) code += piece;
    else if (kind !== "begin" || code !== "") {
      complex.push(code);
      code = "";
    }
  }
  for (const instruction of [...simple, ...complex, code]) {
    const found = FIELDS.exec(unescapeXml(instruction));
    if (found !== null) refuse("report.template-field", part, { found: found[1]!.toUpperCase() });
  }
}
