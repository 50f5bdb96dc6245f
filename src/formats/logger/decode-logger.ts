import type { Finder } from "../finding/finder.ts";
import { attempt } from "../text/attempt.ts";
import { MAX_TEXT_BYTES, tidyText } from "../text/decode-text.ts";
import { type Encoding, type Guess, givenOr, guess } from "./settings.ts";

/**
 * Text of a logger's file in whatever encoding, with the encoding and why it was taken.
 *
 * @returns undefined when the file is blocked. Errors: formats.file-too-large, formats.file-empty, formats.line-too-long,
 *   logger.encoding, logger.binary.
 */
export function decodeLogger(
  bytes: Uint8Array,
  given: Encoding | undefined,
  found: Finder,
): { readonly text: string; readonly encoding: Guess<Encoding> } | undefined {
  if (bytes.length > MAX_TEXT_BYTES) {
    found.block("formats.file-too-large", {}, { found: bytes.length, expected: MAX_TEXT_BYTES });
    return undefined;
  }
  const encoding = givenOr(given, () => encodingOf(bytes));
  const decoded = attempt(() => new TextDecoder(encoding.value, { fatal: true }).decode(bytes));
  if (!decoded.ok) {
    found.block(
      "logger.encoding",
      { line: 1 },
      { found: "bytes of another encoding", expected: encoding.value },
    );
    return undefined;
  }
  // a zero or a control character in the text: no logger writes one on purpose
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const odd = /[\u0000-\u0008\u000e-\u001a\u001c-\u001f]/.exec(decoded.value);
  if (odd !== null) {
    const line = decoded.value.slice(0, odd.index).split(/\r\n?|\n/).length;
    found.block("logger.binary", { line }, { found: codeOf(odd[0]), expected: "readings as text" });
    return undefined;
  }
  const text = tidyText(encoding.value === "windows-1252" ? withoutC1(decoded.value) : decoded.value, found);
  return text === undefined ? undefined : { text, encoding };
}

/** U+0080 to U+009F of Windows-1252; some engines leave these bytes as they are. Source: WHATWG Encoding Standard. */
const C1 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

const withoutC1 = (text: string): string =>
  text.replaceAll(/[\u0080-\u009f]/g, (character) => C1[character.charCodeAt(0) - 0x80]!);

const codeOf = (character: string): string => `U+${character.charCodeAt(0).toString(16).padStart(4, "0")}`;

function encodingOf(bytes: Uint8Array): Guess<Encoding> {
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe)
    return guess("utf-16le", "certain", "logger.why-mark", { found: "UTF-16" });
  if (first === 0xfe && second === 0xff)
    return guess("utf-16be", "certain", "logger.why-mark", { found: "UTF-16" });
  if (first === 0xef && second === 0xbb && third === 0xbf)
    return guess("utf-8", "certain", "logger.why-mark", { found: "UTF-8" });
  const head = bytes.subarray(0, 400);
  const zeros = (parity: number) => head.filter((byte, i) => byte === 0 && i % 2 === parity).length;
  if (zeros(1) > 0.3 * head.length && zeros(0) === 0)
    return guess("utf-16le", "likely", "logger.why-zeros", { found: "UTF-16" });
  if (zeros(0) > 0.3 * head.length && zeros(1) === 0)
    return guess("utf-16be", "likely", "logger.why-zeros", { found: "UTF-16" });
  if (attempt(() => new TextDecoder("utf-8", { fatal: true }).decode(bytes)).ok)
    return guess("utf-8", "certain", "logger.why-utf8");
  return guess("windows-1252", "open", "logger.why-code-page", { found: "Windows-1252" });
}
