import type { Sentences } from "./sentences.ts";

export const accessSentences: Sentences = {
  "access.busy": "The server is busy with other people signing in. Try again in a moment.",
  "access.slow-down": "That was tried too often. Try again in {seconds} s.",
  "access.wrong-login": "Login name and password do not fit together.",
  "access.wrong-password": "That is not the password of this account.",
  "access.wrong-code": "That code does not hold: it was mistyped, used already, or is too old.",
  "access.passkey-refused": "The passkey was not accepted. Try again, or use another way to sign in.",
  "access.no-public-address":
    "Passkeys need to know the address of this server: whoever runs it has to set its public address.",
  "access.sign-in-needed": "Sign in first. What was recorded on this device stays here until then.",
  "access.second-factor-pending": "The password was right; now show the second factor.",
  "access.second-factor-needed":
    "This needs a second factor ({right}): add a passkey or an authenticator program to the account, and sign in with it.",
  "access.not-allowed":
    "The role in this job does not allow this ({right}). Its manager can change the role.",
  "access.session-only": "Only a person who is signed in can do this, not a program with a token.",
  "access.no-accounts": "This server runs for one person on one machine and has no accounts.",
  "access.password-short":
    "A password has at least {expected} characters; this one has {found}. Fifteen or more are better: a few words that do not belong together.",
  "access.password-long": "A password has at most {expected} characters; this one has {found}.",
  "access.password-common":
    "This password is among the first that are guessed: it is a common word, a run of keys or numbers, or made from a name of the account. Choose a few words that do not belong together.",
  "access.login-taken": "This login name cannot be used here. Choose another.",
  "access.link-dead":
    "This link does not work: it was used already, withdrawn, or is too old. Ask for a new one.",
  "access.last-administrator":
    "Somebody has to administer this server: make another account an administrator first.",
  "access.scope-too-wide": "A token cannot do more than its person ({right}).",
};
