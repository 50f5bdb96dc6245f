import type { Sentences } from "./sentences.ts";

export const workSentences: Sentences = {
  "work.unknown-task": "There is no such task: {found}.",
  "work.input": "The task {task} cannot work with this: {field}: {found}.",
  "work.queue-full":
    "There is too much waiting already; one person may have {expected} pieces of work waiting. Wait until some are done, or cancel some.",
  "work.crashed": "The work stopped before it was done ({found}). Ask for it again, or for less at once.",
  "work.lost":
    "Whoever did the work was lost {found} times, so it was given up. Ask for it again, or for less at once.",
  "work.unknown": "There is no such piece of work in this job.",
  "work.not-yours": "This work was asked for by somebody else. Who manages the job can cancel it.",
  "work.no-file": "There is no file to fetch: {found}.",
  "work.job": "The job cannot be worked out as its log stands ({found}).",
};
