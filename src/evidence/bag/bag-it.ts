import type { Issue } from "#core";
import { sha256Hex, utf8 } from "#records";
import { error } from "../issue.ts";
import { textOf } from "./lines.ts";
import { type BagFiles, DECLARATION, MANIFEST, PAYLOAD, TAG_MANIFEST } from "./names.ts";

/** Source: RFC 8493, section 2.1.1. */
export const DECLARATION_TEXT = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";

/**
 * Adds to the files of a bag what makes a bag of them: the declaration and the two manifests.
 *
 * Source: RFC 8493, sections 2.1.1, 2.1.3 and 2.2.1.
 */
export async function withManifests(files: BagFiles): Promise<BagFiles> {
  const all = new Map(files);
  all.set(DECLARATION, utf8(DECLARATION_TEXT));
  all.set(MANIFEST, utf8(await manifestOf(all, (name) => name.startsWith(PAYLOAD))));
  all.set(TAG_MANIFEST, utf8(await manifestOf(all, (name) => !name.startsWith(PAYLOAD))));
  return all;
}

async function manifestOf(files: BagFiles, isListed: (name: string) => boolean): Promise<string> {
  const names = [...files.keys()].filter((name) => isListed(name) && name !== TAG_MANIFEST).sort();
  const lines = [];
  for (const name of names) lines.push(`${await sha256Hex(files.get(name)!)}  ${name}\n`);
  return lines.join("");
}

/**
 * Checks what BagIt asks for: the declaration, and every file listed in its manifest with the hash that it has.
 *
 * Whoever changes a file can write new manifests: this finds damage, and files lost or added on the way.
 *
 * Errors: evidence.bag-version, evidence.manifest-line, evidence.manifest-differs, evidence.manifest-without-file,
 *   evidence.file-without-manifest.
 * Source: RFC 8493, section 3.
 */
export async function checkBagIt(files: BagFiles): Promise<readonly Issue[]> {
  const found: Issue[] = [];
  if (textOf(files.get(DECLARATION) ?? new Uint8Array()) !== DECLARATION_TEXT)
    found.push(error("evidence.bag-version", { file: DECLARATION }));
  const names = [...files.keys()];
  const payload = names.filter((name) => name.startsWith(PAYLOAD));
  const tags = names.filter((name) => !name.startsWith(PAYLOAD) && name !== TAG_MANIFEST);
  found.push(...(await checkManifest(files, MANIFEST, payload)));
  found.push(...(await checkManifest(files, TAG_MANIFEST, tags)));
  return found;
}

async function checkManifest(
  files: BagFiles,
  manifest: string,
  expected: readonly string[],
): Promise<readonly Issue[]> {
  const found: Issue[] = [];
  const listed = new Map<string, string>();
  const lines = textOf(files.get(manifest) ?? new Uint8Array()).split(/\r\n|\n|\r/);
  for (const [i, line] of lines.entries()) {
    if (line === "") continue;
    const [, hash, name] = /^([0-9A-Fa-f]{64})[ \t]+\*?(\S.*)$/.exec(line) ?? [];
    if (hash === undefined || name === undefined || listed.has(name))
      found.push(error("evidence.manifest-line", { file: manifest, line: i + 1 }));
    else listed.set(name, hash.toLowerCase());
  }
  for (const name of expected) {
    const hash = listed.get(name);
    if (hash === undefined) found.push(error("evidence.file-without-manifest", { file: name }, { manifest }));
    else if (hash !== (await sha256Hex(files.get(name)!)))
      found.push(error("evidence.manifest-differs", { file: name }, { manifest }));
  }
  for (const name of listed.keys())
    if (!files.has(name))
      found.push(error("evidence.manifest-without-file", { file: name.slice(0, 300) }, { manifest }));
  return found;
}
