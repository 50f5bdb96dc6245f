import type { Sentences } from "./sentences.ts";

export const evidenceSentences: Sentences = {
  "evidence.answer-sound":
    "Nothing was changed: all entries ({entries}), devices ({devices}) and signatures of people ({seals}) fit what was signed.",
  "evidence.answer-unsettled":
    "Nothing shows that this file was changed, but not everything in it is in order ({entries} entries).",
  "evidence.answer-changed-at":
    "This file was changed: entry {place} is the first that is not as it was signed.",
  "evidence.answer-changed-between":
    "This file was changed: the first entry that is not as it was signed lies between {from} and {to}.",
  "evidence.answer-changed": "This file was changed, or nothing shows that it was not.",
  "evidence.answer-no-bag": "This is no evidence file, or one that is not opened because it could do harm.",
  "evidence.not-a-bag": "{found} is missing: without it this is no evidence file.",
  "evidence.bag-version": "The file does not say that it is a BagIt bag of version 1.0 in UTF-8.",
  "evidence.manifest-line": "A line of the manifest is not a SHA-256 and a name, or names a file twice.",
  "evidence.manifest-differs":
    "The file does not have the SHA-256 that {manifest} states: it was damaged or changed.",
  "evidence.manifest-without-file": "{manifest} lists a file that is not here.",
  "evidence.file-without-manifest": "The file is not listed in {manifest}: it was put in later.",
  "evidence.lines": "The file has too many lines or too long ones, or was cut within a line. It is not read.",
  "evidence.line-form":
    "The line is not in the one form in which it is written (RFC 8785): somebody or some program has written it anew.",
  "evidence.ids": "The list of ids is damaged: it tells nothing about the order of the entries any more.",
  "evidence.derived-differs":
    "What the file repeats from the entries is not what the entries say. Rely on the entries.",
  "evidence.no-entries": "The job has no entries: there is nothing to prove.",
  "evidence.other-job": "It belongs to another job ({found}).",
  "evidence.no-head-over-all":
    "No head signed by the office covers exactly these {entries} entries: nothing shows that they are all, and the right ones.",
  "evidence.head-other-job": "The head was signed for another job ({found}). It says nothing here.",
  "evidence.head-other-key":
    "The head was signed with another key than the office's ({key}). Ask the office whether it ever had it.",
  "evidence.known-head-cut":
    "The head known from outside counts {expected} entries; only {found} are here. The end is missing, or this file is older.",
  "evidence.known-head-differs":
    "The first {size} entries are not those of the head known from outside: this is another story than the one told then.",
  "evidence.tail-cut":
    "The entry {entry} should stand here; from here on {missing} entries are missing at the end.",
  "evidence.entry-missing": "The entry {entry} should stand here and is missing.",
  "evidence.entry-put-in": "The entry {entry} was put in, or stands here a second time.",
  "evidence.entry-moved": "The entry {entry} stands here, but arrived at another place in the order.",
  "evidence.entry-exchanged": "The entry {entry} stands here in place of {expected}.",
  "evidence.blob-missing":
    "The file {blob}, which the entry names, is not here: it was taken out, or never reached the office.",
  "evidence.blob-changed": "The file {blob} was changed: its SHA-256 is another one than its name.",
  "evidence.stray-file": "The file does not belong here: no entry names it.",
  "evidence.seal-not-checked":
    "There are more signatures than are checked in one file; the one for {about} was not checked.",
  "evidence.office-key-not-known":
    "The office's key is taken from the file itself. Ask the office for its key and check with it; without it, a whole story written anew with other keys looks the same.",
  "evidence.no-known-head":
    "Whether the job went on after entry {entries} cannot be seen here. A head printed on a later report, or sent to you, shows it.",
  "evidence.after-last-known-head":
    "Entries {from} to {to} came after the last head known from outside; for them the office's own head speaks alone.",
  "evidence.entries-unread":
    "{found} entries are of kinds that this version cannot read. They are unchanged; what they say was not looked at.",
  "evidence.times-are-claims": "Times are what the devices' clocks said; signatures do not prove them.",
};
