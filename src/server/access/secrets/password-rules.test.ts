import { expect, test } from "vitest";
import { checkPassword } from "./password-rules.ts";

const ABOUT = ["anna.beispiel@office.example", "Anna Beispiel"];
const SHORT = "access.password-short";
const LONG = "access.password-long";
const COMMON = "access.password-common";
const GOOD = "taken";

test.each([
  ["", SHORT],
  ["kurz123", SHORT],
  ["ümläute", SHORT],
  ["password", COMMON],
  ["P@ssw0rd", COMMON],
  ["Passwort2026!", COMMON],
  ["qwertz12345", COMMON],
  ["1234567890", COMMON],
  ["aaaaaaaaaaaa", COMMON],
  ["abcabcabcabc", COMMON],
  ["Sommer2026", COMMON],
  ["Beispiel1!", COMMON],
  ["toeline2026", COMMON],
  ["loveyouhello", COMMON],
  ["correct horse battery staple", GOOD],
  ["vier Wörter auf Papier", GOOD],
  ["uncomposed lowercase", GOOD],
  ["73 geese in Utrecht", GOOD],
  ["пароль не из списка", GOOD],
  ["🐟🦆🐸🌻🪨🧲🪵🧊", GOOD],
  [`${"x7 ".repeat(21)}end`, COMMON],
  ["the 64 characters that every program has to take, and some more.", GOOD],
  ["long enough words that differ, ".repeat(9), LONG],
])("%j", (password, expected) => {
  const checked = checkPassword(password, ABOUT);
  expect(checked.ok ? GOOD : checked.error.code).toBe(expected);
});

test("a name of somebody else is only a word", () => {
  expect(checkPassword("Beispiel1!", ["Otto Muster"]).ok).toBe(true);
});
