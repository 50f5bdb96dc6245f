import type { Sentences } from "./sentences.ts";

export const backUpSentences: Sentences = {
  "backup.not-one": "This is no back-up of an office: {found}.",
  "backup.damaged":
    "The back-up was changed or damaged: part {part}: {found}. Nothing of it was restored; take another copy of it.",
  "backup.cut":
    "The back-up ends too early: after part {part}. Nothing of it was restored; take another copy of it.",
  "backup.newer":
    "The back-up was written by a newer version of the program ({found}; this version knows {expected}). Update the program.",
  "backup.not-empty":
    "There are records at this place already: {found}. A restore only goes into an empty place; nothing was changed.",
  "backup.unfinished":
    "A restore into this place was not finished. Give the same command again; until then the records here are not complete.",
  "backup.row": "A row of {table} in the back-up cannot be written: {found}. Nothing of it was restored.",
  "backup.entry":
    "The entry {entry} of the job {job} is not sound ({found}). The place that was written to is not used.",
  "backup.blob":
    "The file {hash} is not complete, or not what its name says. The place that was written to is not used.",
  "backup.set":
    "The job {job} does not hold the same entries on both sides: {found} instead of {expected}. The place that was written to is not used.",
  "backup.file": "The file could not be read or written: {found}.",
  "backup.source": "There are no records at this place: {found}.",
};
