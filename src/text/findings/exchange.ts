import type { Sentences } from "./sentences.ts";

/** Between a job folder and the log of a job. */
export const exchangeSentences: Sentences = {
  "exchange.conflict":
    "{field} of {thing} was given more than one value by people who did not know of each other: {found}. {used} is used; settle it in the job.",
  "exchange.file-not-here":
    "The file {found} belongs to the job but is not here yet ({blob}). It is left out of the folder.",
  "exchange.file-not-taken": "{found} is no part of a job folder; it was not taken over.",
  "exchange.file-renamed":
    "The readings named {found} were written as {used}: the name was taken, or is none that every disk takes.",
  "exchange.incomplete":
    "The log is not complete here: {found} entries are missing, waiting or not understood. What was made of it may change.",
  "exchange.rows-missing": "Run {run} should have {expected} readings; {found} are here.",
  "exchange.run-not-opened": "Readings of run {found} are here, but not its beginning. It is left out.",
  "exchange.too-large":
    "{found} ({kind}) has too much in one piece: an entry holds at most {expected} bytes. Divide it.",
  "exchange.withdrawn":
    "{found} was withdrawn in the job and stays withdrawn, although the folder still names it.",
};
