import type { Sentences } from "./sentences.ts";

export const deskSentences: Sentences = {
  "desk.nothing-kept":
    "This browser keeps nothing for this page ({found}). Allow it to store data, or leave the private window, then load the page again.",
  "desk.writer-elsewhere":
    "Another window of this browser is writing. Nothing was changed: go on there, or close it and try again.",
  "desk.nobody-signed-in": "It is not known yet who writes. Nothing was changed: sign in, then try again.",
  "desk.cannot-settle":
    "The field {field} of {thing} cannot be written by itself. Nothing was changed: change it on its own screen.",
  "desk.job-not-open": "The job {job} is not open in this window. Open it, then try again.",
  "desk.no-such-job":
    "Neither this device nor the office has a job {job} that you may open. Check the address, or ask to be added to the job.",
  "desk.conflict-open":
    "Two people have changed a field of {element} or of one of its runs. Nothing was signed: settle it first, under Conflicts.",
  "desk.nothing-recorded":
    "No verdict on {element} is recorded yet. Nothing was signed: record the verdict first.",
  "desk.not-worked-out":
    "{element} is not worked out yet. Nothing was recorded: wait until it is, then try again.",
  "desk.office-silent":
    "The office did not answer. Everything on this device is safe: check the connection, then try again.",
  "desk.office-refused":
    "The office did not give it (answer {status}). Ask whoever runs it whether you may see this, or send what is on this device first.",
  "desk.proof-does-not-fit":
    "The path that the office gave does not lead from this entry to the head that it signed. Keep a copy of the job folder and ask the office what happened.",
};
