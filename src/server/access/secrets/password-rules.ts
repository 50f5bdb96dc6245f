import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../../issue.ts";
import { COMMON_WORDS } from "./common-words.ts";

/** Fewest characters. Source: OWASP ASVS 5.0.0, 6.2.1; 15 are advised to people on the screen. */
export const MIN_PASSWORD = 8;
/** Most characters: beyond 64, which ASVS 6.2.9 asks for at least, yet no burden. */
export const MAX_PASSWORD = 256;

/** A common word with this much around it or less is still a common password. */
const LITTLE_MORE = 4;
/** The program's own name, which is on the screen in front of whoever guesses. */
const OWN_NAME = "toeline";
/** Parts of a name shorter than this are in too many passwords to mean anything. */
const MIN_PART = 4;

const KEYBOARD_ROWS = [
  "qwertyuiop",
  "qwertzuiop",
  "azertyuiop",
  "asdfghjkl",
  "zxcvbnm",
  "yxcvbnm",
  "1234567890",
];
const COUNTING = "0123456789012345678901234567890";
const ALPHABET = "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz";
const RUNS = [...KEYBOARD_ROWS.map((row) => row + row), COUNTING, ALPHABET].flatMap((run) => [
  run,
  [...run].reverse().join(""),
]);

const LOOKS_LIKE: Readonly<Record<string, string>> = {
  "0": "o",
  "1": "i",
  "3": "e",
  "4": "a",
  "5": "s",
  "7": "t",
  "@": "a",
  $: "s",
  "!": "i",
  ä: "ae",
  ö: "oe",
  ü: "ue",
  ß: "ss",
};

/**
 * Whether a new password will do. There are no rules on which characters it must have, only on length and on being easily guessed.
 *
 * @param about names that belong to the account: what stands in them is guessed first.
 *
 * Errors: access.password-short, access.password-long, access.password-common.
 * Source: OWASP ASVS 5.0.0, 6.2.1 to 6.2.12; NIST SP 800-63B, 5.1.1.2 (from memory).
 */
export function checkPassword(password: string, about: readonly string[]): Result<true, Issue> {
  const length = [...password].length;
  const refused = (code: string, values: Issue["values"] = {}) => fail(error(code, values, "password"));
  if (length < MIN_PASSWORD)
    return refused("access.password-short", { found: length, expected: MIN_PASSWORD });
  if (length > MAX_PASSWORD)
    return refused("access.password-long", { found: length, expected: MAX_PASSWORD });
  if (isEasilyGuessed(password, about)) return refused("access.password-common");
  return ok(true);
}

/** Source of the kinds of weakness: NIST SP 800-63B, 5.1.1.2 (from memory): leaked, dictionary, repetitive, sequential, context. */
function isEasilyGuessed(password: string, about: readonly string[]): boolean {
  const plain = password.normalize("NFKC").toLowerCase();
  if (isRepetition(plain) || isMostlyRuns(plain)) return true;
  const guesses = [OWN_NAME, ...COMMON_WORDS, ...about.flatMap(partsOf)];
  return [plain, withLetters(plain)].some((form) => guesses.some((guess) => isLittleMoreThan(form, guess)));
}

/** "aaaaaaaa", "abcabcabc": one piece, again and again. */
const isRepetition = (text: string): boolean => /^(.{1,4})\1+.{0,3}$/u.test(text) || new Set(text).size < 4;

/** "12345678", "qwertz123": runs along the keyboard, the numbers or the alphabet, with next to nothing else. */
function isMostlyRuns(text: string): boolean {
  let rest = text;
  for (let length = Math.min(text.length, 12); length >= 3; length--)
    for (let at = 0; at + length <= rest.length; at++) {
      const piece = rest.slice(at, at + length);
      if (RUNS.some((run) => run.includes(piece))) rest = rest.slice(0, at) + rest.slice(at + length);
    }
  return rest.length < LITTLE_MORE;
}

/** The word alone, twice, or with a year, a number or signs around it. */
function isLittleMoreThan(text: string, word: string): boolean {
  if (word.length < 3 || !text.includes(word)) return false;
  const rest = text.split(word).join("");
  const letters = rest.replaceAll(/[^\p{L}]/gu, "");
  return (
    rest.length <= LITTLE_MORE ||
    (letters.length === 0 && rest.length <= 2 * LITTLE_MORE) ||
    COMMON_WORDS.includes(rest)
  );
}

const withLetters = (text: string): string => [...text].map((one) => LOOKS_LIKE[one] ?? one).join("");

const partsOf = (name: string): readonly string[] => {
  const plain = name.normalize("NFKC").toLowerCase();
  return [plain, ...plain.split(/[^\p{L}\p{N}]+/u)].filter((part) => part.length >= MIN_PART);
};
